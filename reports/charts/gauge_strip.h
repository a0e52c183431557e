#pragma once

#include <string>
#include <string_view>

#include "model/units/quantity.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"

namespace lowledger::charts {

/// A strip to cut out and lay beside a slide's bare inner tube, at true size: zero at its left edge.
struct GaugeStrip {
    /// "main slide"
    std::string name;
    /// Where to set it, as it stands at the mark: "20 mm" is written by the caller in the reader's words;
    /// may be empty.
    std::string label;
    units::Millimetres position;
    /// The scale ends here.
    units::Millimetres travel;
    bool operator==(const GaugeStrip&) const = default;
};

/// Outer size of the strip: its scale is exactly `travel` long from the left edge, and a name that does not
/// fit lengthens the strip to the right.
canvas::Size gauge_strip_size(const canvas::Faces& faces, const GaugeStrip& strip);

/// Draws it with its corner at `top_left`. Throws Refusal if position or travel is negative or not finite, or
/// the position lies beyond the travel.
void draw_gauge_strip(canvas::Page& page, const canvas::Faces& faces, const GaugeStrip& strip,
                      const canvas::Point& top_left);

/// A line of exactly 50 mm with the caption under it; measured with a ruler, it shows whether the printer
/// kept the size.
canvas::Size print_check_size(const canvas::Faces& faces, std::string_view caption);
void draw_print_check(canvas::Page& page, const canvas::Faces& faces, std::string_view caption,
                      const canvas::Point& top_left);

}  // namespace lowledger::charts
