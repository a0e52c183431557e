#include "tests/truth/known.h"

namespace lowledger::truth {
namespace {

void fix_ways(tuning::SettingsQuestion& question, const tuning::SlideSettings& settings) {
    for (std::size_t n = 0; n < question.notes.size(); ++n) {
        question.notes[n].ways = {settings.notes[n].way};
        question.notes[n].ways.front().penalty = units::SquareCents(0.0);
    }
}

}  // namespace

void Knowing::know(tuning::SettingsQuestion& question) const {
    for (tuning::QuestionNote& note : question.notes) {
        for (tuning::PlayedNote& way : note.ways) {
            const Played played{note.note, way.fingering, way.partial, question.constants.hand_slide_home};
            way.mean = world_.answered(played, truly_now_, mouthpiece_);
            way.spread = units::Cents(0.0);
        }
    }
    for (std::size_t i = 0; i < question.tube.slides.size(); ++i)
        question.tube.slides[i].bore = world_.tube().slides[i].bore;
    question.covariance.clear();
    question.may_move = true;
    question.constants.step = units::Millimetres(0.0);
    question.constants.chance_of_better = 0.0;
}

tuning::SlideSettings Knowing::settings(tuning::SettingsQuestion question) const {
    know(question);
    return tuning::recommend(question);
}

tuning::SlideSettings Knowing::settings_with_ways(tuning::SettingsQuestion question,
                                                  const tuning::SlideSettings& settings) const {
    fix_ways(question, settings);
    return this->settings(std::move(question));
}

Places Knowing::where_they_belong(tuning::SettingsQuestion question,
                                  const tuning::SlideSettings& settings) const {
    fix_ways(question, settings);
    Places places = recommended(this->settings(without_limits(std::move(question))));
    for (auto& [slide, at] : places)
        at -= moved_out;
    return places;
}

tuning::SettingsQuestion without_limits(tuning::SettingsQuestion question) {
    for (std::size_t i = 0; i < question.slides.size(); ++i) {
        question.tube.slides[i].designed += moved_out;
        question.slides[i].now += moved_out;
        question.slides[i].least = units::Millimetres(0.0);
        question.slides[i].travel = 2.0 * moved_out;
    }
    question.constants.cost_per_cent_moved = 1e-9;
    return question;
}

Places recommended(const tuning::SlideSettings& settings) {
    Places places;
    for (const tuning::SlideAnswer& slide : settings.slides)
        places[slide.slide] = slide.recommended;
    return places;
}

}  // namespace lowledger::truth
