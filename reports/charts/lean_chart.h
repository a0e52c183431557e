#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/horns/kind.h"
#include "model/units/pitch.h"
#include "model/units/quantity.h"
#include "reports/canvas/page.h"
#include "reports/engraving/engraver.h"

namespace lowledger::charts {

/// One column of a lean chart.
struct LeanNote {
    /// As the student reads it.
    units::Spelling spelling;
    std::string fingering;
    /// Before the slides are moved: a hollow bar. Empty where nothing is believed.
    std::optional<units::Cents> before;
    /// After: a filled bar. Empty where there is no advice.
    std::optional<units::Cents> after;
    /// Standard deviation of the last of these, drawn as a whisker each way.
    std::optional<units::Cents> spread;
    /// Another than the usual fingering: marked by a fork.
    bool alternate = false;
    /// False where no reading stands behind it: its bars are faint.
    bool measured = true;
    bool operator==(const LeanNote&) const = default;
};

/// The words on a chart, from reports/words; what is empty is left out.
struct LeanChartWords {
    std::string before;
    std::string after;
    /// "cents"
    std::string unit;
    bool operator==(const LeanChartWords&) const = default;
};

/// How sharp or flat each note is, over the staff.
struct LeanChart {
    horns::Clef clef = horns::Clef::bass;
    /// In the order of pitch.
    std::vector<LeanNote> notes;
    /// The pale band each side of zero.
    units::Cents tolerance{10.0};
    /// Half of the scale; empty: the least of 20, 30, 40 and 50 that holds the bars. A bar that is longer is
    /// cut, and its number stands at its end.
    std::optional<units::Cents> range;
    LeanChartWords words;
    bool operator==(const LeanChart&) const = default;
};

/// Half of the scale in cents: `chart.range`, or the one it picks.
units::Cents range_of(const LeanChart& chart);

/// How many systems the chart needs at a width.
std::size_t systems_needed(const engraving::Engraver& engraver, const LeanChart& chart,
                           units::Millimetres width);

/// The height it likes at a width, all systems together.
units::Millimetres lean_chart_height(const engraving::Engraver& engraver, const LeanChart& chart,
                                     units::Millimetres width);
/// The height below which its bars can no longer be read.
units::Millimetres least_lean_chart_height(const engraving::Engraver& engraver, const LeanChart& chart,
                                           units::Millimetres width);

/// Draws the chart into the box: as wide as the box, as high as the box or, in a lower one than it can do
/// with, `least_lean_chart_height`. Throws Refusal where one column is wider than the box.
void draw_lean_chart(canvas::Page& page, const engraving::Engraver& engraver, const LeanChart& chart,
                     const canvas::Box& box);

}  // namespace lowledger::charts
