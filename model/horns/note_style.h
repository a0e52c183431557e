#pragma once

#include "model/horns/reader.h"
#include "model/units/note_names.h"
#include "model/units/pitch.h"

namespace lowledger::horns {

/// How one player's notes are written and named: the part's clef and transposition, black keys as flats or as
/// sharps, and the language of the names.
struct NoteStyle {
    Reader reader{.id = "bass", .name = "bass clef", .clef = Clef::bass, .written_above = {0}};
    units::Accidentals accidentals = units::Accidentals::flats;
    units::Naming naming = units::Naming::english;
    bool operator==(const NoteStyle&) const = default;
};

/// A sounding pitch as the player's part has it. Throws Refusal above the highest MIDI pitch.
units::Spelling spelt(units::Pitch sounding, const NoteStyle& style);

/// The player calls notes otherwise than a tuner does: written and sounding pitch differ by more than
/// octaves.
bool calls_notes_otherwise(const Reader& reader);

}  // namespace lowledger::horns
