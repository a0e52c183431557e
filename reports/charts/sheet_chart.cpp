#include "reports/charts/sheet_chart.h"

#include <algorithm>
#include <utility>

#include "model/units/refusal.h"
#include "reports/charts/lean_frame.h"
#include "reports/charts/shapes.h"

namespace lowledger::charts {
namespace {

using canvas::Page;
using canvas::Point;
using canvas::Stroke;
using canvas::Tone;
using engraving::Engraver;
using units::Cents;
using units::Millimetres;

constexpr Millimetres newest_radius{0.9};
constexpr Millimetres oldest_radius{0.45};
constexpr Millimetres ring{0.25};

LeanFrame frame_of(const SheetChart& chart) {
    engraving::NoteRow row;
    row.clef = chart.clef;
    for (const SheetNote& note : chart.notes)
        row.notes.push_back({note.spelling, note.fingering, false, std::nullopt});
    Cents most = chart.tolerance;
    bool legend = !chart.unit.empty();
    for (const SheetLeans& sheet : chart.sheets) {
        legend = legend || !sheet.label.empty();
        for (const std::optional<Cents>& lean : sheet.leans) {
            if (lean) most = std::max(most, abs(*lean));
        }
    }
    return {std::move(row), chart.tolerance, scale_for(most), legend};
}

void check(const SheetChart& chart) {
    for (const SheetLeans& sheet : chart.sheets) {
        if (sheet.leans.size() == chart.notes.size()) continue;
        throw units::Refusal("The sheet \"" + sheet.label + "\" has " + std::to_string(sheet.leans.size()) +
                             " notes and its chart " + std::to_string(chart.notes.size()) +
                             "; give each note a value or none.");
    }
}

/// How a sheet's dots look, by its place before the newest (0).
struct Dot {
    Millimetres radius;
    Tone tone = Tone::ink;
    bool hollow = false;
};

Dot dot_of(std::size_t before_newest, std::size_t sheets) {
    if (before_newest == 0) return {newest_radius, Tone::ink, false};
    if (before_newest == 1) return {newest_radius, Tone::ink, true};
    const double share =
        sheets > 3 ? static_cast<double>(before_newest - 2) / static_cast<double>(sheets - 3) : 0.0;
    constexpr double older_share = 0.75;
    return {newest_radius * older_share * (1.0 - share) + oldest_radius * share, Tone::faint, false};
}

void draw_dot(Page& page, const Dot& dot, Point at) {
    if (dot.hollow) {
        add_disc(page, "dot.ground", at, dot.radius, Tone::paper);
        add_ring(page, at, dot.radius, Stroke{ring, dot.tone, false});
    } else {
        add_disc(page, dot.tone == Tone::ink ? "dot.newest" : "dot.older", at, dot.radius, dot.tone);
    }
}

void draw_history(Page& page, const Engraver& engraver, const SheetChart& chart, const LeanPlot& plot,
                  const LeanColumn& column) {
    constexpr double column_share = 0.62;
    constexpr Millimetres widest{12.0};
    constexpr Millimetres joint{0.15};
    const std::size_t count = chart.sheets.size();
    const Millimetres width = std::min(column.width * column_share, widest);
    const auto point = [&](std::size_t s, Cents lean) {
        const double share = count > 1 ? static_cast<double>(s) / static_cast<double>(count - 1) - 0.5 : 0.0;
        return Point{column.middle + width * share, plot.y_of(plot.cut(lean))};
    };
    canvas::Outline joined;
    joined.stroke = {joint, Tone::faint, false};
    for (std::size_t s = 0; s < count; ++s) {
        const std::optional<Cents>& lean = chart.sheets[s].leans[column.note];
        if (!lean) continue;
        if (joined.steps.empty()) {
            joined.steps.emplace_back(canvas::MoveTo{point(s, *lean)});
        } else {
            joined.steps.emplace_back(canvas::LineTo{point(s, *lean)});
        }
    }
    if (joined.steps.size() > 1) page.items.emplace_back(std::move(joined));
    std::optional<Cents> newest;
    for (std::size_t s = 0; s < count; ++s) {
        const std::optional<Cents>& lean = chart.sheets[s].leans[column.note];
        if (!lean) continue;
        draw_dot(page, dot_of(count - 1 - s, count), point(s, *lean));
        newest = lean;
    }
    if (newest && abs(*newest) > plot.range) draw_cut_number(page, engraver, plot, column.middle, *newest);
}

std::vector<LegendEntry> history_entries(const SheetChart& chart) {
    std::vector<LegendEntry> entries;
    const std::size_t count = chart.sheets.size();
    for (std::size_t s = 0; s < count; ++s) {
        const bool named = s == 0 || s + 2 >= count;
        if (!named || chart.sheets[s].label.empty()) continue;
        const Dot dot = dot_of(count - 1 - s, count);
        entries.push_back({chart.sheets[s].label, [dot](Page& page, Point at) { draw_dot(page, dot, at); }});
    }
    return entries;
}

void draw_bar(Page& page, const canvas::Box& box, bool hollow) {
    constexpr Millimetres outline{0.25};
    if (hollow) {
        add_frame(page, box, Stroke{outline, Tone::ink, false});
    } else {
        add_rectangle(page, "bar.second", box, Tone::ink);
    }
}

void draw_pair(Page& page, const Engraver& engraver, const SheetChart& chart, const LeanPlot& plot,
               const LeanColumn& column) {
    constexpr double bar_share = 0.3;
    constexpr Millimetres widest_bar{3.2};
    constexpr Millimetres gap{0.2};
    const Millimetres width = std::min(column.width * bar_share, widest_bar);
    const Millimetres zero = plot.y_of(Cents(0.0));
    std::optional<Cents> cut_up;
    std::optional<Cents> cut_down;
    for (const bool second : {false, true}) {
        const std::optional<Cents>& lean = chart.sheets[second ? 1 : 0].leans[column.note];
        if (!lean) continue;
        const Millimetres tip = plot.y_of(plot.cut(*lean));
        const Millimetres left = column.middle + (second ? gap / 2.0 : -gap / 2.0 - width);
        draw_bar(page, {left, std::min(zero, tip), width, abs(zero - tip)}, !second);
        // Of two cut bars on one side the later one's number is the one to know.
        if (*lean > plot.range) cut_up = lean;
        if (*lean < -plot.range) cut_down = lean;
    }
    for (const std::optional<Cents>& cut : {cut_up, cut_down}) {
        if (cut) draw_cut_number(page, engraver, plot, column.middle, *cut);
    }
}

std::vector<LegendEntry> pair_entries(const SheetChart& chart) {
    constexpr canvas::Size size{Millimetres(1.6), Millimetres(2.2)};
    std::vector<LegendEntry> entries;
    for (const bool second : {false, true}) {
        const std::string& label = chart.sheets[second ? 1 : 0].label;
        if (label.empty()) continue;
        entries.push_back(
            {label, [second, size](Page& page, Point at) {
                 draw_bar(page, {at.x - size.width / 2.0, at.y - size.height / 2.0, size.width, size.height},
                          !second);
             }});
    }
    return entries;
}

void draw_chart(Page& page, const Engraver& engraver, const SheetChart& chart, const canvas::Box& box,
                const std::vector<LegendEntry>& entries, const DrawColumn& draw_column) {
    const LeanFrame frame = frame_of(chart);
    // Refused before anything is drawn.
    static_cast<void>(systems_needed(engraver, frame, box.width));
    if (frame.legend) draw_legend(page, engraver.faces(), chart.unit, entries, box);
    draw_lean_frame(page, engraver, frame, box, draw_column);
}

}  // namespace

Millimetres sheet_chart_height(const Engraver& engraver, const SheetChart& chart, Millimetres width) {
    return frame_height(engraver, frame_of(chart), width);
}

void draw_sheets_over_time(Page& page, const Engraver& engraver, const SheetChart& chart,
                           const canvas::Box& box) {
    check(chart);
    draw_chart(page, engraver, chart, box, history_entries(chart),
               [&](const LeanPlot& plot, const LeanColumn& column) {
                   draw_history(page, engraver, chart, plot, column);
               });
}

void draw_two_sheets(Page& page, const Engraver& engraver, const SheetChart& chart, const canvas::Box& box) {
    check(chart);
    if (chart.sheets.size() != 2) {
        throw units::Refusal("This chart compares two sheets and was given " +
                             std::to_string(chart.sheets.size()) + "; choose two.");
    }
    draw_chart(page, engraver, chart, box, pair_entries(chart),
               [&](const LeanPlot& plot, const LeanColumn& column) {
                   draw_pair(page, engraver, chart, plot, column);
               });
}

}  // namespace lowledger::charts
