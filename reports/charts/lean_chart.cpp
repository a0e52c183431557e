#include "reports/charts/lean_chart.h"

#include <algorithm>

#include "reports/charts/lean_frame.h"
#include "reports/charts/shapes.h"
#include "reports/engraving/note_row.h"

namespace lowledger::charts {
namespace {

using canvas::Page;
using canvas::Stroke;
using canvas::Tone;
using engraving::Engraver;
using units::Cents;
using units::Millimetres;

constexpr Millimetres widest_bar{4.0};
constexpr double bar_share = 0.5;
constexpr double filled_share = 0.55;

bool has_legend(const LeanChartWords& words) {
    return !words.before.empty() || !words.after.empty() || !words.unit.empty();
}

LeanFrame frame_of(const LeanChart& chart) {
    engraving::NoteRow row;
    row.clef = chart.clef;
    for (const LeanNote& note : chart.notes)
        row.notes.push_back({note.spelling, note.fingering, note.alternate, std::nullopt});
    return {std::move(row), chart.tolerance, range_of(chart), has_legend(chart.words)};
}

Tone tone_of(Cents lean, bool measured) {
    if (!measured) return Tone::faint;
    return lean > Cents(0.0) ? Tone::accent : Tone::ink;
}

canvas::Box bar_box(const LeanPlot& plot, Millimetres middle, Millimetres width, Cents lean) {
    const Millimetres zero = plot.y_of(Cents(0.0));
    const Millimetres tip = plot.y_of(plot.cut(lean));
    return {middle - width / 2.0, std::min(zero, tip), width, abs(zero - tip)};
}

/// Ink on white, white on the bar: the whisker's part inside the bar is knocked out.
void draw_whisker(Page& page, const LeanPlot& plot, Millimetres middle, Cents lean, Cents spread,
                  bool filled) {
    constexpr Millimetres width{0.2};
    constexpr Millimetres cap{0.7};
    const auto piece = [&](Cents from, Cents to, Tone tone) {
        page.items.emplace_back(canvas::Line{{middle, plot.y_of(plot.cut(from))},
                                             {middle, plot.y_of(plot.cut(to))},
                                             Stroke{width, tone, false}});
    };
    const Cents low = lean - spread;
    const Cents high = lean + spread;
    const Cents bar_low = std::min(lean, Cents(0.0));
    const Cents bar_high = std::max(lean, Cents(0.0));
    if (filled) {
        if (low < bar_low) piece(low, bar_low, Tone::ink);
        piece(std::max(low, bar_low), std::min(high, bar_high), Tone::paper);
        if (high > bar_high) piece(bar_high, high, Tone::ink);
    } else {
        piece(low, high, Tone::ink);
    }
    for (const Cents end : {low, high}) {
        if (abs(end) > plot.range) continue;
        const bool inside = filled && end > bar_low && end < bar_high;
        const Millimetres y = plot.y_of(end);
        page.items.emplace_back(canvas::Line{
            {middle - cap, y}, {middle + cap, y}, Stroke{width, inside ? Tone::paper : Tone::ink, false}});
    }
}

void draw_column(Page& page, const Engraver& engraver, const LeanPlot& plot, const LeanNote& note,
                 Millimetres middle, Millimetres column_width) {
    const Millimetres width = std::min(column_width * bar_share, widest_bar);
    if (note.before) {
        constexpr Millimetres outline{0.25};
        const canvas::Box box = bar_box(plot, middle, width, *note.before);
        add_frame(page, box, Stroke{outline, note.measured ? Tone::ink : Tone::faint, false});
    }
    if (note.after) {
        add_rectangle(page, *note.after > Cents(0.0) ? "bar.sharp" : "bar.flat",
                      bar_box(plot, middle, width * filled_share, *note.after),
                      tone_of(*note.after, note.measured));
    }
    const std::optional<Cents> last = note.after ? note.after : note.before;
    if (last && note.spread && *note.spread > Cents(0.0)) {
        draw_whisker(page, plot, middle, *last, *note.spread, note.after.has_value());
    }
    // Of two cut bars on one side the later one's number is the one to know.
    for (const std::optional<Cents>& lean : {note.after, note.before}) {
        if (!lean || abs(*lean) <= plot.range) continue;
        draw_cut_number(page, engraver, plot, middle, *lean);
        if (note.after && note.before && (*note.after > Cents(0.0)) == (*note.before > Cents(0.0))) break;
    }
}

void draw_before_sample(Page& page, canvas::Point middle) {
    constexpr canvas::Size size{Millimetres(1.6), Millimetres(2.2)};
    add_frame(page, {middle.x - size.width / 2.0, middle.y - size.height / 2.0, size.width, size.height},
              Stroke{Millimetres(0.25), Tone::ink, false});
}

void draw_after_sample(Page& page, canvas::Point middle) {
    constexpr canvas::Size size{Millimetres(1.6), Millimetres(2.2)};
    add_rectangle(page, "legend.after",
                  {middle.x - size.width / 2.0, middle.y - size.height / 2.0, size.width, size.height},
                  Tone::ink);
}

std::vector<LegendEntry> entries_of(const LeanChartWords& words) {
    std::vector<LegendEntry> entries;
    if (!words.before.empty()) entries.push_back({words.before, draw_before_sample});
    if (!words.after.empty()) entries.push_back({words.after, draw_after_sample});
    return entries;
}

}  // namespace

Cents range_of(const LeanChart& chart) {
    if (chart.range) return *chart.range;
    Cents most = chart.tolerance;
    for (const LeanNote& note : chart.notes) {
        if (note.before) most = std::max(most, abs(*note.before));
        if (note.after) most = std::max(most, abs(*note.after));
    }
    return scale_for(most);
}

std::size_t systems_needed(const Engraver& engraver, const LeanChart& chart, Millimetres width) {
    return systems_needed(engraver, frame_of(chart), width);
}

Millimetres lean_chart_height(const Engraver& engraver, const LeanChart& chart, Millimetres width) {
    return frame_height(engraver, frame_of(chart), width);
}

Millimetres least_lean_chart_height(const Engraver& engraver, const LeanChart& chart, Millimetres width) {
    return least_frame_height(engraver, frame_of(chart), width);
}

void draw_lean_chart(Page& page, const Engraver& engraver, const LeanChart& chart, const canvas::Box& box) {
    const LeanFrame frame = frame_of(chart);
    // Refused before anything is drawn.
    static_cast<void>(systems_needed(engraver, frame, box.width));
    if (frame.legend) draw_legend(page, engraver.faces(), chart.words.unit, entries_of(chart.words), box);
    draw_lean_frame(page, engraver, frame, box, [&](const LeanPlot& plot, const LeanColumn& column) {
        draw_column(page, engraver, plot, chart.notes[column.note], column.middle, column.width);
    });
}

}  // namespace lowledger::charts
