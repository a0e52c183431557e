#include "model/tuning/make_card.h"

#include <algorithm>

#include "model/acoustics/air.h"
#include "model/horns/hand_slide.h"
#include "model/tuning/follow_reading.h"
#include "model/tuning/moved_leans.h"

namespace lowledger::tuning {
namespace {

class CardMaker {
  public:
    CardMaker(const TuningInputs& inputs, const Belief& belief, const SettingsQuestion& question,
              const SlideSettings& settings, const Figures& figures)
        : inputs_(inputs),
          profile_(belief.profile),
          followed_(inputs, belief, question, settings, figures),
          settings_(settings),
          figures_(figures),
          level_(figures.of(inputs.level)),
          moved_(question, settings, belief.profile.correction.part),
          home_(question.constants.hand_slide_home) {}

    [[nodiscard]] TuningCard make() const {
        TuningCard card;
        card.warm_up_minutes = inputs_.kind.warm_up_minutes;
        card.takes = figures_.card_takes;
        card.tuner_a4 = inputs_.tuner_a4;
        card.room = inputs_.room_today.value_or(inputs_.usual_room);
        card.room_known = inputs_.room_today.has_value();
        card.hand_slide_home = home_;
        for (const horns::TuningStep& step : inputs_.kind.tuning_order) {
            const auto slide = inputs_.kind.slide_index(step.slide);
            const ProfileNote* note = profile_.way(step.note, step.fingering);
            if (slide && note != nullptr) card.steps.push_back(step_of(*slide, *note));
        }
        if (const ProfileNote* band = profile_.usual(inputs_.kind.band_note)) {
            card.band_note = BandNote{
                band->note, band->fingering,
                aim_of(*band) + (1.0 - profile_.correction.part) *
                                    horns::change_by_hand_slide(inputs_.kind, band->fingering, home_)};
        }
        return card;
    }

  private:
    /// What the student's tuner should read: usual room and studio's A4 brought to today's.
    [[nodiscard]] units::Cents aim_of(const ProfileNote& note) const {
        const units::Celsius room = inputs_.room_today.value_or(inputs_.usual_room);
        return note.aim + moved_.as_played(note.fingering) +
               acoustics::room_change(inputs_.usual_room, room, figures_.room_beta) +
               units::interval(inputs_.tuner_a4, inputs_.studio_a4);
    }

    [[nodiscard]] bool is_open(const ProfileNote& note) const {
        return note.fingering.valves.empty() && note.fingering.position <= 1;
    }

    /// Standard deviation of the aim because nobody knows just how much of the move the player takes back.
    [[nodiscard]] units::Cents aim_off_by_correction(const ProfileNote& note) const {
        units::Cents moved = moved_.on_horn(note.fingering);
        if (!is_open(note)) moved -= moved_.on_horn({});
        return profile_.correction.spread * moved;
    }

    /// The open note's miss is taken whole, the others' beyond that of the open note.
    [[nodiscard]] double part_of_miss(std::size_t slide, const ProfileNote& note,
                                      units::CentsPerMillimetre cents_per_mm) const {
        const auto number = static_cast<std::size_t>(&note - profile_.notes.data());
        const units::Millimetres follows = followed_.for_a_cent(
            slide, number, is_open(note) ? std::nullopt : open_note(), aim_off_by_correction(note));
        return std::clamp((cents_per_mm * follows).value(), 0.0, 1.0);
    }

    /// Of the tuning order.
    [[nodiscard]] std::optional<std::size_t> open_note() const {
        for (const horns::TuningStep& step : inputs_.kind.tuning_order) {
            const ProfileNote* note = profile_.way(step.note, step.fingering);
            if (note != nullptr && is_open(*note)) {
                return static_cast<std::size_t>(note - profile_.notes.data());
            }
        }
        return std::nullopt;
    }

    [[nodiscard]] CardStep step_of(std::size_t slide, const ProfileNote& note) const {
        const SlideAnswer& answer = settings_.slides[slide];
        CardStep step{answer.slide, note.note, note.fingering, note.partial};
        step.advice = answer.advice;
        step.limit = answer.limit;
        step.position_known = answer.position_known;
        step.now = answer.now;
        step.to = answer.recommended;
        step.change = answer.recommended - answer.now;
        step.aim = aim_of(note);
        step.shifts_with_open_note = !is_open(note);
        step.tolerance = inputs_.tolerance.value_or(level_.tolerance);
        step.cents_per_mm = units::abs(moved_.slope(slide, note.fingering));
        step.part_of_miss = part_of_miss(slide, note, step.cents_per_mm);
        step.half_width = answer.half_width;
        return step;
    }

    const TuningInputs& inputs_;
    const TuningProfile& profile_;
    ReadingFollowed followed_;
    const SlideSettings& settings_;
    const Figures& figures_;
    const LevelFigures& level_;
    MovedLeans moved_;
    units::Millimetres home_;
};

}  // namespace

TuningCard card_of(const TuningInputs& inputs, const Belief& belief, const SettingsQuestion& question,
                   const SlideSettings& settings, const Figures& figures) {
    return CardMaker(inputs, belief, question, settings, figures).make();
}

}  // namespace lowledger::tuning
