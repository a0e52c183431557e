#pragma once

#include <string>

#include "model/studio/records.h"

namespace lowledger::desk {

/// A note as this studio spells it, with its octave: "B♭2".
std::string note_name(const studio::StudioFacts& facts, units::Pitch note);

}  // namespace lowledger::desk
