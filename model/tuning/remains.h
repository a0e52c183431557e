#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/horns/fingering.h"
#include "model/units/pitch.h"
#include "model/units/quantity.h"

namespace lowledger::tuning {

/// The next thing to do about a note, in the order the trade goes.
enum class Remedy {
    /// A trombone's slide further in or out, by `slide_by`.
    hand_slide,
    /// Pull `slide` by `slide_by` while the note sounds, on kinds that say a player can.
    slide_while_playing,
    /// Play it with `instead`.
    other_fingering,
    /// Faster or slower air; the player can do all of it.
    air,
    /// More than air does: the embouchure too, never beyond the level's limit.
    embouchure,
    /// More than a player of this level should bend: the horn, for teacher or technician.
    beyond_player
};

/// A note whose expected lean, as the student plays it with the slides as recommended, is outside the
/// tolerance.
struct RemainingNote {
    units::Pitch note;
    horns::Fingering fingering{};
    int partial = 0;
    /// Expected lean as played, after the settings, and its standard deviation.
    units::Cents lean{};
    units::Cents spread{};
    Remedy next = Remedy::air;
    /// The fingering to try, when `next` is other_fingering; `lean_instead` is what it is expected to leave.
    std::optional<horns::Fingering> instead{};
    std::optional<units::Cents> lean_instead{};
    /// What the player should add, up positive: -lean, cut to the level's limits.
    units::Cents bend{};
    /// Chance that the note is really outside the tolerance.
    double chance = 0.0;
    int takes = 0;
    /// How much further out than it is set the hand slide goes, when `next` is hand_slide, or the slide of a
    /// valve, when it is slide_while_playing; in is negative.
    std::optional<units::Millimetres> slide_by{};
    /// The slide to move, when `next` is slide_while_playing.
    std::optional<std::string> slide{};
    bool operator==(const RemainingNote&) const = default;
};

/// What slides do not cure, the worst by weight and lean first.
struct Remains {
    units::Cents tolerance;
    std::vector<RemainingNote> notes;
    bool operator==(const Remains&) const = default;
};

}  // namespace lowledger::tuning
