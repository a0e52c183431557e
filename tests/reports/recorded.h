#pragma once

#include <string_view>
#include <vector>

#include "reports/canvas/page.h"

namespace lowledger::canvas {

/// Ink of an item: a line with its stroke, a path by its points, a text by the height of its numerals.
Box ink_box(const Item& item);

/// Whether two boxes share more than a hundredth of a mm each way.
bool overlap(const Box& a, const Box& b);
bool within(const Box& inner, const Box& outer);

/// The named shapes of a page, in drawing order.
std::vector<Shape> shapes_named(const Page& page, std::string_view name);
std::vector<Text> texts(const Page& page);

/// The page's recorded text, compared with tests/golden/`name`.txt. Empty when they agree; else says the
/// first line that differs. With LOWLEDGER_WRITE_GOLDEN set in the environment the file is written instead:
/// look at the page before committing it.
std::string difference_from_golden(const Page& page, std::string_view name);

}  // namespace lowledger::canvas
