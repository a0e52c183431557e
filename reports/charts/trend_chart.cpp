#include "reports/charts/trend_chart.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "model/units/number_text.h"
#include "model/units/refusal.h"
#include "reports/canvas/text_block.h"
#include "reports/charts/lean_frame.h"
#include "reports/charts/shapes.h"

namespace lowledger::charts {
namespace {

using canvas::Faces;
using canvas::Page;
using canvas::Point;
using canvas::Stroke;
using canvas::Tone;
using std::chrono::sys_days;
using units::Millimetres;

constexpr std::size_t most_series = 3;
constexpr Millimetres narrowest{40.0};
constexpr Millimetres least_plot{18.0};
constexpr Millimetres hairline{0.1};
constexpr Millimetres axis_line{0.3};
constexpr Millimetres label_gap{1.0};
/// White beside the first and last point, so that their marks stand clear of the axis.
constexpr Millimetres side{4.0};
constexpr Millimetres tick_length{1.0};
constexpr Millimetres mark{0.9};
/// Over the plot, for the mark and number at the scale's end.
constexpr Millimetres head_room{2.5};

bool has_head(const TrendChart& chart) {
    return !chart.title.empty() || std::any_of(chart.series.begin(), chart.series.end(),
                                               [](const TrendSeries& s) { return !s.name.empty(); });
}

void check(const TrendChart& chart, const canvas::Box& box) {
    if (chart.series.size() > most_series) {
        throw units::Refusal("A trend chart shows at most three lines and was given " +
                             std::to_string(chart.series.size()) + "; choose three.");
    }
    for (const TrendSeries& series : chart.series) {
        for (std::size_t i = 0; i < series.points.size(); ++i) {
            const TrendPoint& point = series.points[i];
            if (i > 0 && point.day < series.points[i - 1].day) {
                throw units::Refusal("The day " + point.label +
                                     " of a trend chart stands after a later one; give days in order.");
            }
            if (!point.value) continue;
            if (!(*point.value >= 0.0) || !std::isfinite(*point.value) ||
                (chart.most && *point.value > *chart.most)) {
                throw units::Refusal("The value of " + point.label +
                                     " lies outside the scale of its trend chart.");
            }
        }
    }
    if (box.width < narrowest || box.height < least_trend_chart_height(chart)) {
        throw units::Refusal("A trend chart needs " + units::decimal_text(narrowest.value(), 0) + " x " +
                             units::decimal_text(std::ceil(least_trend_chart_height(chart).value()), 0) +
                             " mm; give it more room.");
    }
}

struct DayText {
    std::string label;
    std::string under;
};

/// The days of all series with what stands under them.
std::map<sys_days, DayText> days_of(const TrendChart& chart) {
    std::map<sys_days, DayText> days;
    for (const TrendSeries& series : chart.series) {
        const bool first = &series == &chart.series.front();
        for (const TrendPoint& point : series.points)
            days.emplace(point.day, DayText{point.label, first ? point.under : std::string()});
    }
    return days;
}

bool any_under(const TrendChart& chart) {
    if (chart.series.empty()) return false;
    const std::vector<TrendPoint>& points = chart.series.front().points;
    return std::any_of(points.begin(), points.end(), [](const TrendPoint& p) { return !p.under.empty(); });
}

struct TrendPlot {
    canvas::Box box;
    sys_days first;
    sys_days last;
    double most = 1.0;

    [[nodiscard]] Millimetres x_of(sys_days day) const {
        if (first == last) return box.left + box.width / 2.0;
        const double share =
            static_cast<double>((day - first).count()) / static_cast<double>((last - first).count());
        return box.left + side + (box.width - side * 2.0) * share;
    }
    [[nodiscard]] Millimetres y_of(double value) const { return box.bottom() - box.height * (value / most); }
};

int decimals_of(const std::vector<double>& scale) {
    if (scale.size() < 2 || scale[1] >= 1.0) return 0;
    return static_cast<int>(std::ceil(-std::log10(scale[1]) - 1e-9));
}

std::string scale_text(const TrendChart& chart, double value, int decimals) {
    return units::decimal_text(value, decimals) + chart.unit;
}

void draw_scale(Page& page, const Faces& faces, const TrendChart& chart, const TrendPlot& plot) {
    const std::vector<double> scale = scale_of(chart);
    for (const double value : scale) {
        const Millimetres y = plot.y_of(value);
        const Stroke stroke =
            value == 0.0 ? Stroke{axis_line, Tone::ink, false} : Stroke{hairline, Tone::faint, false};
        page.items.emplace_back(canvas::Line{{plot.box.left, y}, {plot.box.right(), y}, stroke});
        draw_text(page, faces, scale_text(chart, value, decimals_of(scale)), chart_text,
                  {plot.box.left - label_gap, middle_baseline(y, chart_text)}, canvas::Align::right);
    }
}

/// A tick for every day; texts from the last day back wherever there is room.
void draw_days(Page& page, const Faces& faces, const TrendChart& chart, const TrendPlot& plot,
               const canvas::Box& box) {
    constexpr Millimetres white{1.5};
    const std::map<sys_days, DayText> days = days_of(chart);
    const Millimetres baseline = plot.box.bottom() + tick_length + label_gap + numeral_height(chart_text);
    Millimetres free_to = box.right();
    for (auto day = days.rbegin(); day != days.rend(); ++day) {
        const auto& [label, under] = day->second;
        const Millimetres x = plot.x_of(day->first);
        page.items.emplace_back(canvas::Line{{x, plot.box.bottom()},
                                             {x, plot.box.bottom() + tick_length},
                                             Stroke{axis_line, Tone::ink, false}});
        const Millimetres half =
            std::max(faces.width(label, chart_text), faces.width(under, chart_text)) / 2.0;
        // The last day's text goes aside rather than over the box's end.
        const Millimetres middle = day == days.rbegin() ? std::min(x, box.right() - half) : x;
        if (middle + half > free_to || middle - half < box.left) continue;
        draw_text(page, faces, label, chart_text, {middle, baseline}, canvas::Align::centre);
        draw_text(page, faces, under, chart_text, {middle, baseline + canvas::leading(chart_text)},
                  canvas::Align::centre);
        free_to = middle - half - white;
    }
}

void draw_mark(Page& page, std::size_t series, Point at) {
    constexpr Millimetres ring{0.3};
    switch (series) {
        case 0:
            add_disc(page, "point.first", at, mark, Tone::ink);
            return;
        case 1:
            add_disc(page, "point.ground", at, mark, Tone::paper);
            add_ring(page, at, mark, Stroke{ring, Tone::ink, false});
            return;
        default:
            add_rectangle(page, "point.third", {at.x - mark, at.y - mark, mark * 2.0, mark * 2.0},
                          Tone::faint);
    }
}

Stroke stroke_of(std::size_t series) {
    constexpr Millimetres width{0.35};
    return {width, series == 2 ? Tone::faint : Tone::ink, series == 1};
}

void draw_line(Page& page, const TrendPlot& plot, const TrendSeries& series, std::size_t place) {
    canvas::Outline line;
    line.stroke = stroke_of(place);
    const auto finish = [&] {
        if (line.steps.size() > 1) page.items.emplace_back(line);
        line.steps.clear();
    };
    for (const TrendPoint& point : series.points) {
        if (!point.value) {
            finish();
            continue;
        }
        const Point at{plot.x_of(point.day), plot.y_of(*point.value)};
        if (line.steps.empty()) {
            line.steps.emplace_back(canvas::MoveTo{at});
        } else {
            line.steps.emplace_back(canvas::LineTo{at});
        }
    }
    finish();
}

void draw_head(Page& page, const Faces& faces, const TrendChart& chart, const canvas::Box& box) {
    std::vector<LegendEntry> entries;
    for (std::size_t i = 0; i < chart.series.size(); ++i) {
        if (chart.series[i].name.empty()) continue;
        entries.push_back({chart.series[i].name, [i](Page& p, Point at) { draw_mark(p, i, at); }});
    }
    draw_legend(page, faces, chart.title, entries, box);
}

Millimetres head_height(const TrendChart& chart) {
    return (has_head(chart) ? canvas::leading(chart_text) : Millimetres(0.0)) + head_room;
}

Millimetres foot_height(const TrendChart& chart) {
    return tick_length + label_gap + canvas::leading(chart_text) * (any_under(chart) ? 2.0 : 1.0);
}

}  // namespace

std::vector<double> scale_of(const TrendChart& chart) {
    constexpr double most_steps = 7.0;
    double most = chart.most.value_or(0.0);
    if (!chart.most) {
        for (const TrendSeries& series : chart.series) {
            for (const TrendPoint& point : series.points)
                most = std::max(most, point.value.value_or(0.0));
        }
        if (most <= 0.0) most = 1.0;
    }
    double step = std::pow(10.0, std::floor(std::log10(most / most_steps)));
    for (const double factor : {2.0, 2.5, 2.0}) {
        if (most / step <= most_steps + 1e-9) break;
        step *= factor;
    }
    const auto steps =
        static_cast<int>(chart.most ? std::floor(most / step + 1e-9) : std::ceil(most / step - 1e-9));
    std::vector<double> scale;
    for (int i = 0; i <= steps; ++i)
        scale.push_back(step * i);
    return scale;
}

Millimetres least_trend_chart_height(const TrendChart& chart) {
    return head_height(chart) + least_plot + foot_height(chart);
}

void draw_trend_chart(Page& page, const Faces& faces, const TrendChart& chart, const canvas::Box& box) {
    check(chart, box);
    const std::vector<double> scale = scale_of(chart);
    Millimetres axis(0.0);
    for (const double value : scale)
        axis =
            std::max(axis, faces.width(scale_text(chart, value, decimals_of(scale)), chart_text) + label_gap);
    const Millimetres top = box.top + head_height(chart);
    TrendPlot plot;
    plot.box = {box.left + axis, top, box.width - axis, box.bottom() - foot_height(chart) - top};
    plot.most = chart.most.value_or(scale.back());
    const std::map<sys_days, DayText> days = days_of(chart);
    if (!days.empty()) {
        plot.first = days.begin()->first;
        plot.last = days.rbegin()->first;
    }
    if (has_head(chart)) draw_head(page, faces, chart, box);
    draw_scale(page, faces, chart, plot);
    draw_days(page, faces, chart, plot, box);
    for (std::size_t i = chart.series.size(); i > 0; --i)
        draw_line(page, plot, chart.series[i - 1], i - 1);
    for (std::size_t i = chart.series.size(); i > 0; --i) {
        for (const TrendPoint& point : chart.series[i - 1].points) {
            if (point.value) draw_mark(page, i - 1, {plot.x_of(point.day), plot.y_of(*point.value)});
        }
    }
}

}  // namespace lowledger::charts
