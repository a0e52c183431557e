#pragma once

#include "reports/canvas/page.h"
#include "reports/canvas/paper.h"

namespace lowledger::pages {

/// What a page is printed on, and how large its type is.
struct PageStyle {
    canvas::Paper paper = canvas::Paper::a4;
    /// Everything `large_print_scale` times as large, for who reads small type badly or plays at a stand for
    /// two. What must be true to size never is.
    bool large_print = false;
};

/// Body type of 9 points becomes 12.6 points, small type 9.8.
inline constexpr double large_print_scale = 1.4;

/// The size of page to lay out on.
canvas::Size layout_size(const PageStyle& style);
/// What was laid out on that size as it is printed.
canvas::Document printed(canvas::Document laid_out, const PageStyle& style);

}  // namespace lowledger::pages
