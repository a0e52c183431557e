#pragma once

#include "reports/canvas/page.h"

namespace lowledger::canvas {

enum class Paper {
    /// 210 x 297 mm (ISO 216).
    a4,
    /// 8.5 x 11 inches (ANSI/ASME Y14.1).
    letter
};

constexpr Size size_of(Paper paper) {
    using units::Millimetres;
    return paper == Paper::a4 ? Size{Millimetres(210.0), Millimetres(297.0)}
                              : Size{Millimetres(215.9), Millimetres(279.4)};
}

/// What is kept free at every edge: wide enough for office printers, which leave out 4 to 7 mm (common
/// practice), and for a hand or a punched hole at the side.
constexpr units::Millimetres margin{15.0};

/// Where a page's contents stand.
constexpr Box live_area(Size page) {
    return {margin, margin, page.width - 2.0 * margin, page.height - 2.0 * margin};
}

}  // namespace lowledger::canvas
