#pragma once

#include <vector>

#include "reports/engraving/engraver.h"
#include "reports/engraving/music.h"

namespace lowledger::engraving {

/// The narrowest staff on which nothing touches.
units::Millimetres narrowest_line(const Engraver& engraver, const MusicLine& line);

/// Where each event's anchor stands on `staff` (a note's head, a rest's or bar line's middle): space after a
/// note grows with the square root of its duration (common practice), and the last event's right edge is the
/// staff's end. Throws Refusal if the staff is narrower than `narrowest_line`.
std::vector<units::Millimetres> anchors_of(const Engraver& engraver, const MusicLine& line,
                                           const Staff& staff);

/// The accidental that each event shows: events that are no notes have `hidden`.
std::vector<AccidentalMark> accidentals_of(const MusicLine& line);

/// Draws the line and returns the y below its lowest ink. Throws as `anchors_of`.
units::Millimetres draw_music_line(canvas::Page& page, const Engraver& engraver, const MusicLine& line,
                                   const canvas::Point& top_left, units::Millimetres width);

}  // namespace lowledger::engraving
