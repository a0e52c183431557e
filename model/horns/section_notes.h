#pragma once

#include <optional>
#include <span>
#include <vector>

#include "model/horns/chart.h"

namespace lowledger::horns {

/// The notes that a whole section plays, as one horn plays them: each in the octave within the usual range
/// that is nearest the note a band tunes to on that horn. `notes` are sounding pitches whose octave does not
/// matter. In their order; empty for a note that the horn cannot sound.
std::vector<std::optional<ChartNote>> section_notes(const HornKind& kind,
                                                    std::span<const units::Pitch> notes);

}  // namespace lowledger::horns
