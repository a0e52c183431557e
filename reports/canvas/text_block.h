#pragma once

#include <string_view>
#include <vector>

#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"

namespace lowledger::canvas {

enum class Align { left, centre, right };

/// A paragraph broken into lines that fit `width` (at spaces, at hyphens and slashes, and inside a word that
/// is wider than the whole width); line breaks in the text are kept. Nothing is ever wider than `width`.
std::vector<std::string> wrapped(const Faces& faces, std::string_view text, const TextStyle& style,
                                 units::Millimetres width);

/// The text, or as much of it as fits `width` with an ellipsis.
std::string shortened(const Faces& faces, std::string_view text, const TextStyle& style,
                      units::Millimetres width);

/// Baseline to baseline.
units::Millimetres leading(const TextStyle& style);

/// Draws one line at a baseline; `at` is its left end, centre or right end.
void draw_text(Page& page, const Faces& faces, std::string_view text, const TextStyle& style, Point at,
               Align align = Align::left);

/// Draws a wrapped paragraph with its top at `box.top`, and returns the y below it. It may pass
/// `box.bottom()`; the caller measures first (`block_height`).
units::Millimetres draw_block(Page& page, const Faces& faces, std::string_view text, const TextStyle& style,
                              Point top_left, units::Millimetres width, Align align = Align::left);
units::Millimetres block_height(const Faces& faces, std::string_view text, const TextStyle& style,
                                units::Millimetres width);

}  // namespace lowledger::canvas
