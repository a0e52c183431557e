#include "model/tuning/follow_reading.h"

#include "model/tuning/question.h"

namespace lowledger::tuning {

Chosen chosen_by(const SettingsQuestion& question, const SlideSettings& settings) {
    Chosen chosen;
    for (const SlideAnswer& slide : settings.slides)
        chosen.at.push_back(slide.recommended.value());
    for (std::size_t n = 0; n < question.notes.size(); ++n) {
        std::size_t way = 0;
        while (question.notes[n].ways[way] != settings.notes[n].way)
            ++way;
        chosen.ways.push_back(way);
    }
    return chosen;
}

PlaceModel place_model_of(const SettingsQuestion& question, const SlideSettings& settings) {
    const Chosen chosen = chosen_by(question, settings);
    return place_model(problem_of(question), {chosen.at, chosen.ways});
}

ReadingFollowed::ReadingFollowed(const TuningInputs& inputs, const Belief& belief,
                                 const SettingsQuestion& question, const SlideSettings& settings,
                                 const Figures& figures)
    : belief_(belief),
      ways_(ways_of_question(inputs, belief.profile)),
      model_(place_model_of(question, settings)) {
    const LevelFigures& level = figures.of(inputs.level);
    of_note_ =
        units::square(level.note_by_sitting).value() + units::square(level.take).value() / figures.card_takes;
    of_sitting_ = units::square(level.sitting).value() + units::square(figures.tuner).value();
}

/// Covariance of where the slide belongs, in mm out, with the lean as played of a note.
double ReadingFollowed::place_with_reading(std::size_t slide, std::size_t note) const {
    const std::size_t size = belief_.profile.notes.size();
    double sum = 0.0;
    for (std::size_t way = 0; way < ways_.size(); ++way) {
        sum -= model_.shift[slide * model_.ways + way] * belief_.slides_by_reading[ways_[way] * size + note];
    }
    return sum;
}

units::Millimetres ReadingFollowed::for_a_cent(std::size_t slide, std::size_t note,
                                               std::optional<std::size_t> against,
                                               units::Cents aim_off) const {
    const std::size_t size = belief_.profile.notes.size();
    const auto played = [&](std::size_t i, std::size_t j) { return belief_.played_covariance[i * size + j]; };
    double with = place_with_reading(slide, note);
    double variance = played(note, note) + of_note_ + units::square(aim_off).value();
    if (against) {
        with -= place_with_reading(slide, *against);
        variance += played(*against, *against) - 2.0 * played(note, *against) + of_note_;
    } else {
        variance += of_sitting_;
    }
    return units::Millimetres(variance > 0.0 ? with / variance : 0.0);
}

}  // namespace lowledger::tuning
