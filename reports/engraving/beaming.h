#pragma once

#include <vector>

#include "reports/engraving/music.h"

namespace lowledger::engraving {

/// Events (their places in the line, all eighths) under one beam.
using BeamGroup = std::vector<std::size_t>;

/// Neighbouring eighths of one beat: a dotted quarter in times of 6, 9 and 12 eighths, else a quarter; four
/// that fill half a bar of 4/4 or a whole one of 2/4 together (common practice). Without a time bars count as
/// 4/4.
std::vector<BeamGroup> beam_groups(const MusicLine& line);

/// Up unless the note that lies furthest from the middle line lies above it, or no note lies further and the
/// group not below it on average.
bool beamed_stems_go_up(const std::vector<StaffPosition>& notes);

struct BeamedNote {
    /// Of the stem's middle.
    StaffSpaces x;
    StaffPosition position;
};

/// The beam's edge away from the heads, above the staff's bottom line at the first and last stem.
struct Beam {
    bool up = true;
    StaffSpaces start;
    StaffSpaces end;
};

constexpr StaffSpaces beam_thickness{0.5};
/// A beam rises or falls at most so far from its first to its last stem.
constexpr StaffSpaces most_beam_slant{1.25};
/// No beamed stem is shorter, from the head's middle to the beam's far edge.
constexpr StaffSpaces shortest_beamed_stem{2.75};

/// Where the beam lies: its slant grows with the interval of the outer notes, at most one in four; it is flat
/// where these are level or an inner note lies nearer to it. It reaches the middle line and leaves no thin
/// wedge of white between itself and a staff line (common practice).
Beam beam_over(const std::vector<BeamedNote>& notes);

}  // namespace lowledger::engraving
