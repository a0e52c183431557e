#include "reports/charts/lean_chart.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "model/units/number_text.h"
#include "model/units/refusal.h"
#include "reports/canvas/text_block.h"
#include "reports/charts/shapes.h"
#include "reports/engraving/note_row.h"

namespace lowledger::charts {
namespace {

using canvas::Page;
using canvas::Stroke;
using canvas::TextStyle;
using canvas::Tone;
using engraving::Engraver;
using units::Cents;
using units::Millimetres;

constexpr Millimetres liked_plot{34.0};
constexpr Millimetres least_plot{16.0};
/// Between the plot and the highest ink of the row under it.
constexpr Millimetres plot_to_row{2.0};
constexpr Millimetres system_gap{5.0};
constexpr Millimetres label_gap{1.0};
/// Room over and under the plot for the number at the end of a cut bar.
constexpr Millimetres number_room{3.2};
constexpr Millimetres hairline{0.1};
constexpr Millimetres zero_line{0.3};
constexpr Millimetres widest_bar{4.0};
constexpr double bar_share = 0.5;
constexpr double filled_share = 0.55;
const TextStyle small{units::Points(7.0), canvas::Weight::regular, Tone::faint};
const TextStyle number_style{units::Points(7.0), canvas::Weight::bold, Tone::ink};

engraving::NoteRow row_of(const LeanChart& chart, std::size_t begin, std::size_t end) {
    engraving::NoteRow row;
    row.clef = chart.clef;
    for (std::size_t i = begin; i < end; ++i) {
        const LeanNote& note = chart.notes.at(i);
        row.notes.push_back({note.spelling, note.fingering, note.alternate, std::nullopt});
    }
    return row;
}

engraving::NoteRow row_of(const LeanChart& chart) {
    return row_of(chart, 0, chart.notes.size());
}

/// Columns of one system, and how the box is shared out.
struct Plan {
    std::size_t systems = 1;
    std::size_t columns = 0;
    /// From the box's left edge to the first column.
    Millimetres start;
    Millimetres column_width;
    /// Of each system.
    std::vector<engraving::NoteRowHeights> rows;
    /// Legend above the first system.
    Millimetres head;
};

Millimetres axis_width(const Engraver& engraver, const LeanChart& chart) {
    const std::string widest = units::signed_text(-range_of(chart).value(), 0, true);
    return engraver.faces().width(widest, small) + label_gap;
}

bool has_legend(const LeanChartWords& words) {
    return !words.before.empty() || !words.after.empty() || !words.unit.empty();
}

/// One past the last note of a system.
std::size_t end_of(const Plan& plan, const LeanChart& chart, std::size_t system) {
    return std::min((system + 1) * plan.columns, chart.notes.size());
}

Plan plan_of(const Engraver& engraver, const LeanChart& chart, Millimetres width) {
    Plan plan;
    const engraving::NoteRow row = row_of(chart);
    plan.head = has_legend(chart.words) ? canvas::leading(small) : Millimetres(0.0);
    plan.start = std::max(first_column(engraver, row), axis_width(engraver, chart));
    const Millimetres room = width - plan.start;
    const Millimetres narrowest = narrowest_column(engraver, row);
    if (chart.notes.empty()) {
        plan.column_width = room;
        plan.rows.push_back(row_heights(engraver, row));
        return plan;
    }
    if (room < narrowest) {
        throw units::Refusal("A lean chart needs a width of at least " +
                             units::decimal_text((plan.start + narrowest).value(), 0) +
                             " mm; give it more room or a smaller staff.");
    }
    const auto most = static_cast<std::size_t>(room / narrowest);
    plan.systems = (chart.notes.size() + most - 1) / most;
    plan.columns = (chart.notes.size() + plan.systems - 1) / plan.systems;
    plan.column_width = room / static_cast<double>(plan.columns);
    for (std::size_t s = 0; s < plan.systems; ++s)
        plan.rows.push_back(row_heights(engraver, row_of(chart, s * plan.columns, end_of(plan, chart, s))));
    return plan;
}

/// Height of everything but the plots.
Millimetres fixed_height(const Plan& plan) {
    Millimetres height = plan.head + system_gap * (static_cast<double>(plan.systems) - 1.0);
    for (const engraving::NoteRowHeights& row : plan.rows)
        height += number_room * 2.0 + plot_to_row + row.height();
    return height;
}

/// The plot of one system.
struct Plot {
    canvas::Box box;
    Cents range;
    [[nodiscard]] Millimetres y_of(Cents lean) const {
        return box.top + box.height * ((range - lean) / (range * 2.0));
    }
    [[nodiscard]] Cents cut(Cents lean) const { return std::clamp(lean, -range, range); }
};

Cents tick_of(Cents range) {
    constexpr Cents coarse_from{40.0};
    return range < coarse_from ? Cents(10.0) : range / 2.0;
}

void draw_scale(Page& page, const Engraver& engraver, const Plot& plot, Cents tolerance) {
    const canvas::Box& box = plot.box;
    const Cents half = std::min(tolerance, plot.range);
    add_rectangle(page, "tolerance",
                  {box.left, plot.y_of(half), box.width, plot.y_of(-half) - plot.y_of(half)}, Tone::pale);
    const Cents tick = tick_of(plot.range);
    const auto ticks = static_cast<int>(std::floor(plot.range / tick + 1e-9));
    for (int i = -ticks; i <= ticks; ++i) {
        const Millimetres y = plot.y_of(tick * i);
        const Stroke stroke =
            i == 0 ? Stroke{zero_line, Tone::ink, false} : Stroke{hairline, Tone::faint, false};
        page.items.emplace_back(canvas::Line{{box.left, y}, {box.right(), y}, stroke});
        draw_text(page, engraver.faces(), units::signed_text((tick * i).value(), 0, true), small,
                  {box.left - label_gap, middle_baseline(y, small)}, canvas::Align::right);
    }
}

Tone tone_of(Cents lean, bool measured) {
    if (!measured) return Tone::faint;
    return lean > Cents(0.0) ? Tone::accent : Tone::ink;
}

canvas::Box bar_box(const Plot& plot, Millimetres middle, Millimetres width, Cents lean) {
    const Millimetres zero = plot.y_of(Cents(0.0));
    const Millimetres tip = plot.y_of(plot.cut(lean));
    return {middle - width / 2.0, std::min(zero, tip), width, abs(zero - tip)};
}

/// Ink on white, white on the bar: the whisker's part inside the bar is knocked out.
void draw_whisker(Page& page, const Plot& plot, Millimetres middle, Cents lean, Cents spread, bool filled) {
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

/// The number at the end of a bar that the scale cuts.
void draw_cut_number(Page& page, const Engraver& engraver, const Plot& plot, Millimetres middle, Cents lean) {
    constexpr Millimetres gap{0.6};
    const bool up = lean > Cents(0.0);
    const Millimetres baseline =
        up ? plot.box.top - gap : plot.box.bottom() + gap + numeral_height(number_style);
    draw_text(page, engraver.faces(), units::signed_text(lean.value(), 0, true), number_style,
              {middle, baseline}, canvas::Align::centre);
}

void draw_column(Page& page, const Engraver& engraver, const Plot& plot, const LeanNote& note,
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

/// Unit at the left; hollow and filled samples with their words at the right.
void draw_legend(Page& page, const Engraver& engraver, const LeanChart& chart, const canvas::Box& box) {
    constexpr Millimetres sample_width{1.6};
    constexpr Millimetres sample_height{2.2};
    constexpr Millimetres gap{1.0};
    constexpr Millimetres between{4.0};
    const Millimetres baseline = box.top + units::in_millimetres(small.size);
    const canvas::Faces& faces = engraver.faces();
    draw_text(page, faces, chart.words.unit, small, {box.left, baseline}, canvas::Align::left);
    Millimetres right = box.right();
    for (const bool after : {true, false}) {
        const std::string& word = after ? chart.words.after : chart.words.before;
        if (word.empty()) continue;
        draw_text(page, faces, word, small, {right, baseline}, canvas::Align::right);
        right -= faces.width(word, small) + gap + sample_width;
        const canvas::Box sample{right, baseline - sample_height, sample_width, sample_height};
        if (after) {
            add_rectangle(page, "legend.after", sample, Tone::ink);
        } else {
            add_frame(page, sample, Stroke{Millimetres(0.25), Tone::ink, false});
        }
        right -= between;
    }
}

}  // namespace

Cents range_of(const LeanChart& chart) {
    constexpr std::array<Cents, 4> scales = {Cents(20.0), Cents(30.0), Cents(40.0), Cents(50.0)};
    if (chart.range) return *chart.range;
    Cents most = chart.tolerance;
    for (const LeanNote& note : chart.notes) {
        if (note.before) most = std::max(most, abs(*note.before));
        if (note.after) most = std::max(most, abs(*note.after));
    }
    const auto fits = std::find_if(scales.begin(), scales.end(), [&](Cents s) { return s >= most; });
    return fits == scales.end() ? scales.back() : *fits;
}

std::size_t systems_needed(const Engraver& engraver, const LeanChart& chart, Millimetres width) {
    return plan_of(engraver, chart, width).systems;
}

Millimetres lean_chart_height(const Engraver& engraver, const LeanChart& chart, Millimetres width) {
    const Plan plan = plan_of(engraver, chart, width);
    return fixed_height(plan) + liked_plot * static_cast<double>(plan.systems);
}

Millimetres least_lean_chart_height(const Engraver& engraver, const LeanChart& chart, Millimetres width) {
    const Plan plan = plan_of(engraver, chart, width);
    return fixed_height(plan) + least_plot * static_cast<double>(plan.systems);
}

void draw_lean_chart(Page& page, const Engraver& engraver, const LeanChart& chart, const canvas::Box& box) {
    const Plan plan = plan_of(engraver, chart, box.width);
    const Millimetres share = (box.height - fixed_height(plan)) / static_cast<double>(plan.systems);
    const Millimetres plot_height = std::max(share, least_plot);
    if (has_legend(chart.words)) draw_legend(page, engraver, chart, box);
    Millimetres top = box.top + plan.head;
    for (std::size_t s = 0; s < plan.systems; ++s) {
        const std::size_t begin = s * plan.columns;
        const std::size_t end = end_of(plan, chart, s);
        const Millimetres width =
            plan.column_width * static_cast<double>(std::max<std::size_t>(end - begin, 1));
        const Millimetres left = box.left + plan.start;
        const Plot plot{{left, top + number_room, width, plot_height}, range_of(chart)};
        draw_scale(page, engraver, plot, chart.tolerance);
        for (std::size_t i = begin; i < end; ++i) {
            const Millimetres middle = left + plan.column_width * (static_cast<double>(i - begin) + 0.5);
            draw_column(page, engraver, plot, chart.notes[i], middle, plan.column_width);
        }
        const Millimetres staff_top = plot.box.bottom() + number_room + plot_to_row - plan.rows.at(s).top;
        draw_note_row(page, engraver, row_of(chart, begin, end),
                      {chart.clef, {box.left, staff_top}, plan.start + width}, left, plan.column_width);
        top = staff_top + plan.rows.at(s).bottom + system_gap;
    }
}

}  // namespace lowledger::charts
