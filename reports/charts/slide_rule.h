#pragma once

#include <optional>

#include "model/units/quantity.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"

namespace lowledger::charts {

/// Where a slide is and where it should be, in mm out from fully in.
struct SlideRule {
    /// Where it is: a hollow mark. Empty when nobody has measured it.
    std::optional<units::Millimetres> now;
    /// Where it should be: a solid mark. Empty until there is advice; equal to `now` for 'leave it'.
    std::optional<units::Millimetres> recommended;
    /// How sure that is, each way: a bar.
    units::Millimetres half_width;
    /// Not further in than this: a thin stop.
    units::Millimetres least;
    /// Not further out than this: a thick stop at the end of the scale. Throws Refusal when drawn if it is
    /// not positive.
    units::Millimetres travel;
    bool operator==(const SlideRule&) const = default;
};

units::Millimetres slide_rule_height();

/// Draws the rule at the top of the box, as wide as the box. Numbers that would touch another are left out,
/// those of the two marks never.
void draw_slide_rule(canvas::Page& page, const canvas::Faces& faces, const SlideRule& rule,
                     const canvas::Box& box);

/// Where on the page a position of the slide stands, for a pointer over the rule.
units::Millimetres x_on_rule(const SlideRule& rule, const canvas::Box& box, units::Millimetres position);

}  // namespace lowledger::charts
