#pragma once

#include <vector>

#include "model/tuning/answer.h"

namespace lowledger::tuning {

/// A way of playing a note that the answer speaks of.
struct WayToPlay {
    units::Pitch note;
    horns::Fingering fingering;
    int partial = 0;
    bool usual = true;
    bool operator==(const WayToPlay&) const = default;
};

/// The chart of the kind's usual range, the notes of its tuning order and everything that `used` sheets have
/// readings of; alternates where the level may use them. By pitch, the usual fingering of each first; false
/// tones left out.
std::vector<WayToPlay> ways_to_play(const TuningInputs& inputs,
                                    const std::vector<const studio::TuningSheet*>& used);

/// Whether a player of that level is given alternate fingerings.
bool may_use_alternates(const horns::HornKind& kind, studio::Level level);

/// The partial of a reading: the one written down, or the likeliest. Empty for a false tone. Throws Refusal
/// for a fingering that the horn does not have or that cannot sound the note.
std::optional<int> partial_of(const horns::HornKind& kind, const studio::TuningSheet& sheet,
                              const studio::Reading& reading);

}  // namespace lowledger::tuning
