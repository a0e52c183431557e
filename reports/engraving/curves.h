#pragma once

#include <string>

#include "reports/canvas/page.h"
#include "reports/engraving/ink.h"

namespace lowledger::engraving {

/// A tie or slur: from tip to tip, bulging up or down by `height` at its middle.
struct Curve {
    canvas::Point from;
    canvas::Point to;
    units::Millimetres height;
    bool above = true;
};

/// The curve as a shape, `thickness` in the middle and 0.1 mm at its tips.
canvas::Shape curve_shape(const Curve& curve, units::Millimetres thickness, std::string name);

/// A slur between two tips, raised until it keeps `gap` from every box of `ink` but near its tips.
Curve slur_clear_of(const Skyline& ink, Curve slur, units::Millimetres space, units::Millimetres gap);

}  // namespace lowledger::engraving
