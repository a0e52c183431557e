#pragma once

#include <vector>

#include "reports/engraving/engraver.h"
#include "reports/engraving/music.h"

namespace lowledger::engraving {

/// One staff of a line, laid out with its top line's left end at (0, 0).
struct EngravedSystem {
    std::vector<canvas::Item> items;
    units::Millimetres staff_width;
    /// Of the highest and lowest ink; `top` is negative.
    units::Millimetres top;
    units::Millimetres bottom;
    [[nodiscard]] units::Millimetres height() const { return bottom - top; }
};

/// The narrowest width at which the line can be set, in as many systems as it takes.
units::Millimetres narrowest_width(const Engraver& engraver, const MusicLine& line);

/// Sets a line on as many staves of `width` as it takes, broken at bar lines (within a bar, between beams,
/// only where one bar is wider than a staff) so that all are about equally full. The last one, if it would be
/// stretched far, ends earlier. Throws Refusal below `narrowest_width`.
std::vector<EngravedSystem> engrave(const Engraver& engraver, const MusicLine& line,
                                    units::Millimetres width);

/// White between the ink of two systems.
units::Millimetres system_gap(const Engraver& engraver);

/// Puts a system on a page, its staff's top left corner at `staff_top_left`.
void place(canvas::Page& page, const EngravedSystem& system, const canvas::Point& staff_top_left);

/// Sets a line, its highest ink at `top_left.y`, and returns the y of its lowest ink. Throws as `engrave`.
units::Millimetres draw_music(canvas::Page& page, const Engraver& engraver, const MusicLine& line,
                              const canvas::Point& top_left, units::Millimetres width);

}  // namespace lowledger::engraving
