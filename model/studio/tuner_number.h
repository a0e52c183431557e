#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "model/units/pitch.h"
#include "model/units/quantity.h"

namespace lowledger::studio {

/// What was typed for a tuner's value, understood for one expected note.
struct TunerNumber {
    /// Within 50 of the note: taken. Within 100: taken after the teacher says so. Beyond: refused.
    enum class Verdict { taken, ask, refused } verdict = Verdict::refused;
    units::Cents cents;
    /// Why it asks or refuses, a sentence; empty when taken.
    std::string sentence;
};

/// Understands "-7", "+12", "7,5", the minus sign U+2212, and a note name before the number when the tuner
/// showed a neighbour: "G-45" for a G-flat is +55, since tuners wrap at 50. The name may carry an accidental
/// and an octave ("Gb", "F#2").
TunerNumber read_tuner_number(std::string_view typed, units::Pitch expected);

/// A slide position as typed: mm with point or comma, "in" (0), "half" (half of `travel`); empty if it is
/// none of these.
std::optional<units::Millimetres> read_slide_position(std::string_view typed, units::Millimetres travel);

}  // namespace lowledger::studio
