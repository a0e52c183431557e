#pragma once

#include <string>

#include "model/units/pitch.h"

namespace lowledger::horns {

enum class Clef { bass, treble, tenor, alto };

/// How a player's part is written: its clef, and how far above the sounding pitch it stands.
struct Reader {
    /// Key in files: "bass", "treble-b-flat".
    std::string id;
    /// As a list shows it: "treble clef in B-flat, a major ninth above".
    std::string name;
    Clef clef = Clef::bass;
    /// 14 for a euphonium in treble clef, 0 for parts at sounding pitch.
    units::Semitones written_above;
    bool operator==(const Reader&) const = default;
};

/// A sounding note as the reader's part spells it: letter and octave moved by the interval's staff steps, so
/// that a sounding B-flat a major ninth up is a C. Where that gave E#, B#, Cb, Fb or a double accidental, the
/// usual spelling of the key instead. Throws Refusal above the highest MIDI pitch.
units::Spelling written(const units::Spelling& sounding, const Reader& reader);

/// The sounding pitch of a written note. Throws Refusal below the lowest MIDI pitch.
units::Pitch sounding(const units::Spelling& written, const Reader& reader);

}  // namespace lowledger::horns
