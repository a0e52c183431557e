#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "model/units/quantity.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"

namespace lowledger::charts {

struct TrendPoint {
    std::chrono::sys_days day;
    /// The day as the axis writes it: "3 Mar".
    std::string label;
    /// In the chart's unit; empty where there is none: the line is broken there.
    std::optional<double> value;
    /// What the value rests on, under the day: "14 notes"; may be empty. Shown of the first series.
    std::string under{};
    bool operator==(const TrendPoint&) const = default;
};

struct TrendSeries {
    /// For the legend; may be empty.
    std::string name;
    std::vector<TrendPoint> points;
    bool operator==(const TrendSeries&) const = default;
};

/// Values by date: a share of notes in tolerance, minutes of practice.
struct TrendChart {
    /// At most three: a full line with discs, a dashed one with rings, a faint one with squares.
    std::vector<TrendSeries> series;
    /// After the numbers of the scale: "%"; may be empty.
    std::string unit;
    /// What is charted, over the scale; may be empty.
    std::string title;
    /// The scale's end: 100 for shares. Empty: a round number from the highest value up.
    std::optional<double> most;
    bool operator==(const TrendChart&) const = default;
};

/// Values at the scale's lines: from 0 to the end by 1, 2 or 5 times a power of ten, four to eight of them.
std::vector<double> scale_of(const TrendChart& chart);

units::Millimetres least_trend_chart_height(const TrendChart& chart);

/// Draws the chart into the box. The distance between points is as the days between them; days whose labels
/// would meet go without one, the last day never. Throws Refusal for more than three series, points out of
/// order, a value that is negative or over `most`, and a box lower than `least_trend_chart_height` or
/// narrower than 40 mm.
void draw_trend_chart(canvas::Page& page, const canvas::Faces& faces, const TrendChart& chart,
                      const canvas::Box& box);

}  // namespace lowledger::charts
