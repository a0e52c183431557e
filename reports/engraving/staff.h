#pragma once

#include <vector>

#include "model/horns/kind.h"
#include "model/units/pitch.h"
#include "model/units/quantity.h"
#include "reports/canvas/page.h"

namespace lowledger::engraving {

/// Lengths of engraving: 1 is the distance between two neighbouring staff lines.
using StaffSpaces = units::Quantity<struct StaffSpacesUnit>;

/// A line or space of a staff: half spaces above the bottom line (0 = bottom line, 8 = top line, negative
/// below).
struct StaffPosition {
    int half_spaces = 0;
    constexpr auto operator<=>(const StaffPosition&) const = default;
};

constexpr StaffPosition bottom_line{0};
constexpr StaffPosition middle_line{4};
constexpr StaffPosition top_line{8};

/// Where a clef puts a note: the bass clef has F3 on the fourth line, the treble clef G4 on the second, the
/// alto and tenor clefs C4 on the third and fourth.
StaffPosition position_of(horns::Clef clef, const units::Spelling& spelling);

/// The line that a clef's sign names and stands on.
StaffPosition line_of_clef(horns::Clef clef);

/// The ledger lines of a note, nearest the staff first; empty on the staff and in the spaces beside it.
std::vector<StaffPosition> ledger_lines(StaffPosition note);

/// Whether a note so low reads better an octave higher under an 8va bassa: more than four ledger lines below.
bool reads_better_8va_bassa(StaffPosition note);

/// Up below the middle line; down on it and above (common practice).
bool stem_goes_up(StaffPosition note);

/// An octave, or on far ledger lines as long as reaches the middle line (common practice).
StaffSpaces stem_length(StaffPosition note);

/// Sharps (positive) or flats (negative) at the start of a staff, -7..7.
struct KeySignature {
    int fifths = 0;
    bool operator==(const KeySignature&) const = default;
};

/// Alteration that the key gives a letter: -1, 0 or +1.
int alteration_in(KeySignature key, units::Letter letter);

/// Where the accidentals of the key stand, in their order.
std::vector<StaffPosition> key_positions(horns::Clef clef, KeySignature key);

/// A staff on a page; `top_left` is the left end of its top line.
struct Staff {
    horns::Clef clef = horns::Clef::bass;
    canvas::Point top_left;
    units::Millimetres width;
};

}  // namespace lowledger::engraving
