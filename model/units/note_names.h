#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "model/units/pitch.h"

namespace lowledger::units {

/// The languages in which notes are named here.
enum class Naming {
    /// B-flat is Bb, B natural B.
    english,
    /// B-flat is B, B natural H; sharps end in -is, flats in -es.
    german,
    /// Fixed do: C is Do, B Si; accidentals as in English.
    solfege,
};

/// A note's name without its octave: "B♭", "F♯"; "B", "Fis"; "Si♭", "Fa♯".
std::string note_name(const Spelling& spelling, Naming naming);

/// Reads a note's name with its octave, in either case; `b`, `#` and the signs U+266D/U+266F where the naming
/// has accidentals. Solfège reads "re" and "ré", "sol" and "so", "si" and "ti". Empty if it is none.
std::optional<Spelling> parse_note(std::string_view text, Naming naming);

}  // namespace lowledger::units
