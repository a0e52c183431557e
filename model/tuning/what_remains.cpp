#include "model/tuning/what_remains.h"

#include <algorithm>
#include <cmath>

#include "model/horns/hand_slide.h"
#include "model/tuning/loss.h"
#include "model/tuning/moved_leans.h"
#include "model/tuning/slide_places.h"
#include "model/tuning/ways.h"

namespace lowledger::tuning {
namespace {

/// Chance that a lean N(mean, spread^2) is outside +-tolerance.
double chance_outside(units::Cents mean, units::Cents spread, units::Cents tolerance) {
    if (spread.value() <= 0.0) return units::abs(mean) > tolerance ? 1.0 : 0.0;
    return normal_below(-((tolerance - mean) / spread)) + normal_below((-tolerance - mean) / spread);
}

class RemainsFinder {
  public:
    RemainsFinder(const TuningInputs& inputs, const TuningProfile& profile, const SettingsQuestion& question,
                  const SlideSettings& settings, const Figures& figures)
        : inputs_(inputs),
          profile_(profile),
          settings_(settings),
          figures_(figures),
          level_(figures.of(inputs.level)),
          moved_(question, settings, profile.correction.part),
          tolerance_(inputs.tolerance.value_or(level_.tolerance)),
          home_(question.constants.hand_slide_home),
          horn_share_(1.0 - profile.correction.part) {}

    [[nodiscard]] Remains find() const {
        std::vector<std::pair<double, RemainingNote>> found;
        for (const NoteAnswer& answer : settings_.notes) {
            const ProfileNote* usual = profile_.usual(answer.note);
            if (answer.weight <= 0.0 || usual == nullptr) continue;
            if (units::abs(lean_after(*usual)) <= tolerance_) continue;
            const RemainingNote note = next_for(*usual);
            found.emplace_back(answer.weight * units::abs(note.lean).value(), note);
        }
        std::ranges::stable_sort(found, std::greater<>{}, [](const auto& entry) { return entry.first; });
        Remains remains{tolerance_, {}};
        for (const auto& [importance, note] : found)
            remains.notes.push_back(note);
        return remains;
    }

  private:
    [[nodiscard]] units::Cents lean_after(const ProfileNote& note) const {
        return as_played_after(inputs_.kind, note, moved_, profile_.correction.part, home_);
    }

    /// How much further out the hand slide goes to bring the note in tune, as far as there is slide.
    [[nodiscard]] units::Millimetres slide_by(const ProfileNote& note) const {
        const units::Millimetres now = horns::plain_position(inputs_.kind, note.fingering) + home_;
        const units::Millimetres wanted =
            now + horns::slide_offset(inputs_.kind, note.fingering, lean_after(note));
        return std::clamp(wanted, units::Millimetres(0.0), *inputs_.kind.hand_slide) - now;
    }

    [[nodiscard]] bool slide_places(const ProfileNote& note) const {
        if (!inputs_.kind.hand_slide) return false;
        const units::Cents left =
            lean_after(note) + horns::change_by_hand_slide(inputs_.kind, note.fingering, slide_by(note));
        return units::abs(left) <= tolerance_;
    }

    /// Another fingering of the note that is expected inside the tolerance, the nearest to zero.
    [[nodiscard]] const ProfileNote* better_fingering(const ProfileNote& usual) const {
        if (!may_use_alternates(inputs_.kind, inputs_.level)) return nullptr;
        const ProfileNote* best = nullptr;
        for (const ProfileNote& way : profile_.notes) {
            if (way.note != usual.note || way.usual) continue;
            if (units::abs(lean_after(way)) > tolerance_) continue;
            if (best == nullptr || units::abs(lean_after(way)) < units::abs(lean_after(*best))) best = &way;
        }
        return best;
    }

    /// The slide and how far out of where it is set it brings a sharp note in tune, where an advanced player
    /// can move one so far during the note.
    [[nodiscard]] std::optional<std::pair<std::string, units::Millimetres>> pulled_while_playing(
        const ProfileNote& note) const {
        if (inputs_.level != studio::Level::advanced || lean_after(note).value() <= 0.0) return std::nullopt;
        for (std::size_t i = 0; i < inputs_.kind.slides.size(); ++i) {
            const SlideAnswer& slide = settings_.slides[i];
            if (!inputs_.kind.slides[i].while_playing || is_stuck(slide.slide)) continue;
            const double cents_per_mm = horn_share_ * moved_.slope(i, note.fingering).value();
            if (cents_per_mm >= 0.0) continue;
            const units::Millimetres by(lean_after(note).value() / -cents_per_mm);
            if (by <= slide.travel - slide.recommended) return std::pair{slide.slide, by};
        }
        return std::nullopt;
    }

    [[nodiscard]] bool is_stuck(const std::string& slide) const {
        return std::ranges::any_of(inputs_.slides, [&](const studio::HornSlide& known) {
            return known.slide == slide && known.stuck;
        });
    }

    [[nodiscard]] RemainingNote next_for(const ProfileNote& usual) const {
        RemainingNote note{usual.note, usual.fingering, usual.partial, lean_after(usual), usual.spread};
        note.takes = usual.takes;
        note.chance = chance_outside(note.lean, note.spread, tolerance_);
        const units::Cents most = note.lean.value() > 0.0 ? level_.lip_down : level_.lip_up;
        const units::Cents size = units::abs(note.lean);
        const units::Cents bend = std::min(size, most);
        note.bend = note.lean.value() > 0.0 ? -bend : bend;
        // Bending into the tolerance is enough.
        const units::Cents needed = size - tolerance_;
        if (slide_places(usual)) {
            note.next = Remedy::hand_slide;
            note.slide_by = slide_by(usual);
        } else if (const auto pulled = pulled_while_playing(usual)) {
            note.next = Remedy::slide_while_playing;
            note.slide = pulled->first;
            note.slide_by = pulled->second;
        } else if (const ProfileNote* other = better_fingering(usual)) {
            note.next = Remedy::other_fingering;
            note.instead = other->fingering;
            note.lean_instead = lean_after(*other);
        } else if (needed <= figures_.air_part * most) {
            note.next = Remedy::air;
        } else if (needed <= most) {
            note.next = Remedy::embouchure;
        } else {
            note.next = Remedy::beyond_player;
        }
        return note;
    }

    const TuningInputs& inputs_;
    const TuningProfile& profile_;
    const SlideSettings& settings_;
    const Figures& figures_;
    const LevelFigures& level_;
    MovedLeans moved_;
    units::Cents tolerance_;
    units::Millimetres home_;
    double horn_share_;
};

}  // namespace

Remains remains_of(const TuningInputs& inputs, const TuningProfile& profile, const SettingsQuestion& question,
                   const SlideSettings& settings, const Figures& figures) {
    return RemainsFinder(inputs, profile, question, settings, figures).find();
}

}  // namespace lowledger::tuning
