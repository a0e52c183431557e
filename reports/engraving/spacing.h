#pragma once

#include <vector>

#include "reports/engraving/beaming.h"
#include "reports/engraving/engraver.h"
#include "reports/engraving/music.h"

namespace lowledger::engraving {

/// The accidental that each event shows: events that are no notes have `hidden`. A note that a tie leads to
/// shows none.
std::vector<AccidentalMark> accidentals_of(const MusicLine& line);

/// Each event as a note of the engraver, with its accidental, octave and, under a beam, the stem's side;
/// default ones for what is no note.
std::vector<Note> notes_of(const MusicLine& line);

/// One event in the row of springs: ink around its anchor (a note's head, else the middle) and the space it
/// would like after it.
struct Column {
    StaffSpaces left;
    StaffSpaces right;
    /// Half the width of the widest sign under it.
    StaffSpaces half_under;
    StaffSpaces natural;
    /// Room that a tie or hairpin needs between this and the next.
    StaffSpaces clear_after;
    bool bar_line = false;
};

std::vector<Column> columns_of(const Engraver& engraver, const MusicLine& line,
                               const std::vector<Note>& notes);

/// From anchor to anchor: space after a note grows with the square root of its duration, an eighth's being 2
/// spaces at a stretch of 1 (common practice), and is never less than ink needs.
std::vector<StaffSpaces> advances(const std::vector<Column>& columns, double stretch);

/// From the first column's left ink to the last one's right.
StaffSpaces width_of(const std::vector<Column>& columns, double stretch);

/// The stretch at which the columns fill `width`.
double stretch_to_fill(const std::vector<Column>& columns, StaffSpaces width);

}  // namespace lowledger::engraving
