#pragma once

#include <random>

#include "reports/engraving/music_line.h"
#include "reports/engraving/note_row.h"

namespace lowledger::engraving {

/// Two bars and a half with every duration, rest and bar line, accidentals and ledger lines.
MusicLine exercise();

/// Notes from the pedal register up, with fingerings, an alternate and tendencies.
NoteRow full_row();

/// A line that a seed makes: clef, key, notes within and far outside the staff, rests, bar lines.
MusicLine random_line(unsigned seed);

/// Short exercises as a routine carries them, of many kinds.
std::vector<MusicLine> routine_exercises();

/// Whole bars of a time, within reach of the staff and a little beyond, with everything that text can say.
MusicLine random_music(unsigned seed);

}  // namespace lowledger::engraving
