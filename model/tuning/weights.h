#pragma once

#include <map>
#include <string_view>

#include "model/horns/kind.h"
#include "model/units/pitch.h"

namespace lowledger::tuning {

/// Weights of every note of the kind's usual range for a teacher who names what counts, those that are not
/// named 0 (`TeacherHand::weights`):
/// - "notes:Bb1,C2" these, each 1;
/// - "scale:Bb1" the major scale from there, an octave;
/// - "register:low", "middle" or "high", a third of the usual range each;
/// - "shares:Bb1=3,C2=1" shares of the music that the student plays.
/// Throws Refusal that says what is wrong and what can be written.
std::map<units::Pitch, double> weights_named(std::string_view what, const horns::HornKind& kind);

}  // namespace lowledger::tuning
