#include "model/tuning/make_card.h"

#include <algorithm>

#include "model/acoustics/air.h"
#include "model/horns/hand_slide.h"
#include "model/tuning/moved_leans.h"

namespace lowledger::tuning {
namespace {

class CardMaker {
  public:
    CardMaker(const TuningInputs& inputs, const TuningProfile& profile, const SettingsQuestion& question,
              const SlideSettings& settings, const Figures& figures)
        : inputs_(inputs),
          profile_(profile),
          settings_(settings),
          figures_(figures),
          level_(figures.of(inputs.level)),
          moved_(question, settings, profile.correction.part),
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

    /// P/(P+R): P what is not known of the place (as the reading shows it), R what a reading of three takes
    /// adds.
    [[nodiscard]] double part_of_miss(const ProfileNote& note) const {
        const double horn_share = 1.0 - profile_.correction.part;
        double place = horn_share * horn_share * units::square(note.slides_spread).value();
        double reading = units::square(level_.note_by_sitting).value() +
                         units::square(level_.take).value() / figures_.card_takes;
        if (is_open(note)) {
            reading += units::square(level_.sitting).value() + units::square(figures_.tuner).value();
        } else {
            place = horn_share * horn_share * variance_against_open(note);
            reading *= 2.0;
        }
        reading += units::square(aim_off_by_correction(note)).value();
        return place > 0.0 ? place / (place + reading) : 0.0;
    }

    /// Standard deviation of the aim because nobody knows just how much of the move the player takes back.
    [[nodiscard]] units::Cents aim_off_by_correction(const ProfileNote& note) const {
        units::Cents moved = moved_.on_horn(note.fingering);
        if (!is_open(note)) moved -= moved_.on_horn({});
        return profile_.correction.spread * moved;
    }

    /// Variance of the note's lean against the open note's, which the sitting does not touch.
    [[nodiscard]] double variance_against_open(const ProfileNote& note) const {
        const std::size_t size = profile_.notes.size();
        const auto open = std::ranges::find_if(inputs_.kind.tuning_order, [&](const horns::TuningStep& step) {
            return step.fingering.valves.empty() && step.fingering.position <= 1;
        });
        const auto i = static_cast<std::size_t>(&note - profile_.notes.data());
        const auto& c = profile_.slides_covariance;
        const ProfileNote* from =
            open == inputs_.kind.tuning_order.end() ? nullptr : profile_.way(open->note, open->fingering);
        if (from == nullptr) return c[i * size + i];
        const auto j = static_cast<std::size_t>(from - profile_.notes.data());
        return std::max(0.0, c[i * size + i] + c[j * size + j] - 2.0 * c[i * size + j]);
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
        step.part_of_miss = part_of_miss(note);
        step.cents_per_mm = units::abs(moved_.slope(slide, note.fingering));
        step.half_width = answer.half_width;
        return step;
    }

    const TuningInputs& inputs_;
    const TuningProfile& profile_;
    const SlideSettings& settings_;
    const Figures& figures_;
    const LevelFigures& level_;
    MovedLeans moved_;
    units::Millimetres home_;
};

}  // namespace

TuningCard card_of(const TuningInputs& inputs, const TuningProfile& profile, const SettingsQuestion& question,
                   const SlideSettings& settings, const Figures& figures) {
    return CardMaker(inputs, profile, question, settings, figures).make();
}

}  // namespace lowledger::tuning
