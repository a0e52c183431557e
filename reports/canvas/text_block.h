#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"

namespace lowledger::canvas {

enum class Align { left, centre, right };

/// A paragraph broken into lines that fit `width`: at spaces, after a hyphen or slash that joins two words
/// ("half-step" but not "B-flat" or "1/2"), and inside a word that is wider than the whole width. Line breaks
/// in the text are kept; an empty text is no lines. Nothing is wider than `width`, unless `width` is too
/// narrow for a single character: then every line has one.
std::vector<std::string> wrapped(const Faces& faces, std::string_view text, const TextStyle& style,
                                 units::Millimetres width);

/// The text, or as much of it as fits `width` with an ellipsis; empty where not even that fits.
std::string shortened(const Faces& faces, std::string_view text, const TextStyle& style,
                      units::Millimetres width);

/// Baseline to baseline.
units::Millimetres leading(const TextStyle& style);

/// From the top of a line to its baseline: room for a capital with an accent.
units::Millimetres ascent(const TextStyle& style);

/// Draws one line at a baseline; `at` is its left end, centre or right end.
void draw_text(Page& page, const Faces& faces, std::string_view text, const TextStyle& style, Point at,
               Align align = Align::left);

/// Draws lines (as `wrapped` gives) with the first one's top at `top_left`, and returns the y below them.
units::Millimetres draw_lines(Page& page, const Faces& faces, const std::vector<std::string>& lines,
                              const TextStyle& style, Point top_left, units::Millimetres width,
                              Align align = Align::left);

/// Draws a wrapped paragraph with its top at `top_left`, and returns the y below it: `block_height` further
/// down, which the caller asks first where room is short.
units::Millimetres draw_block(Page& page, const Faces& faces, std::string_view text, const TextStyle& style,
                              Point top_left, units::Millimetres width, Align align = Align::left);
units::Millimetres block_height(const Faces& faces, std::string_view text, const TextStyle& style,
                                units::Millimetres width);

}  // namespace lowledger::canvas
