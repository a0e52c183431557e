#include "reports/charts/lean_frame.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "model/units/number_text.h"
#include "model/units/refusal.h"
#include "reports/canvas/text_block.h"
#include "reports/charts/shapes.h"

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
const TextStyle number_style{units::Points(7.0), canvas::Weight::bold, Tone::ink};

engraving::NoteRow part_of(const engraving::NoteRow& row, std::size_t begin, std::size_t end) {
    const auto at = [&](std::size_t i) { return row.notes.begin() + static_cast<std::ptrdiff_t>(i); };
    return {row.clef, {at(begin), at(end)}, row.duration};
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

Millimetres axis_width(const Engraver& engraver, const LeanFrame& frame) {
    const std::string widest = units::signed_text(-frame.range.value(), 0, true);
    return engraver.faces().width(widest, chart_text) + label_gap;
}

/// One past the last note of a system.
std::size_t end_of(const Plan& plan, const LeanFrame& frame, std::size_t system) {
    return std::min((system + 1) * plan.columns, frame.row.notes.size());
}

Plan plan_of(const Engraver& engraver, const LeanFrame& frame, Millimetres width) {
    Plan plan;
    const engraving::NoteRow& row = frame.row;
    plan.head = frame.legend ? canvas::leading(chart_text) : Millimetres(0.0);
    plan.start = std::max(first_column(engraver, row), axis_width(engraver, frame));
    const Millimetres room = width - plan.start;
    const Millimetres narrowest = narrowest_column(engraver, row);
    if (row.notes.empty()) {
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
    plan.systems = (row.notes.size() + most - 1) / most;
    plan.columns = (row.notes.size() + plan.systems - 1) / plan.systems;
    plan.column_width = room / static_cast<double>(plan.columns);
    for (std::size_t s = 0; s < plan.systems; ++s)
        plan.rows.push_back(row_heights(engraver, part_of(row, s * plan.columns, end_of(plan, frame, s))));
    return plan;
}

/// Height of everything but the plots.
Millimetres fixed_height(const Plan& plan) {
    Millimetres height = plan.head + system_gap * (static_cast<double>(plan.systems) - 1.0);
    for (const engraving::NoteRowHeights& row : plan.rows)
        height += number_room * 2.0 + plot_to_row + row.height();
    return height;
}

Cents tick_of(Cents range) {
    constexpr Cents coarse_from{40.0};
    return range < coarse_from ? Cents(10.0) : range / 2.0;
}

void draw_scale(Page& page, const Engraver& engraver, const LeanPlot& plot, Cents tolerance) {
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
        draw_text(page, engraver.faces(), units::signed_text((tick * i).value(), 0, true), chart_text,
                  {box.left - label_gap, middle_baseline(y, chart_text)}, canvas::Align::right);
    }
}

}  // namespace

Cents scale_for(Cents most) {
    constexpr std::array<Cents, 4> scales = {Cents(20.0), Cents(30.0), Cents(40.0), Cents(50.0)};
    const auto* const fits = std::find_if(scales.begin(), scales.end(), [&](Cents s) { return s >= most; });
    return fits == scales.end() ? scales.back() : *fits;
}

Millimetres LeanPlot::y_of(Cents lean) const {
    return box.top + box.height * ((range - lean) / (range * 2.0));
}

Cents LeanPlot::cut(Cents lean) const {
    return std::clamp(lean, -range, range);
}

std::size_t systems_needed(const Engraver& engraver, const LeanFrame& frame, Millimetres width) {
    return plan_of(engraver, frame, width).systems;
}

Millimetres frame_height(const Engraver& engraver, const LeanFrame& frame, Millimetres width) {
    const Plan plan = plan_of(engraver, frame, width);
    return fixed_height(plan) + liked_plot * static_cast<double>(plan.systems);
}

Millimetres least_frame_height(const Engraver& engraver, const LeanFrame& frame, Millimetres width) {
    const Plan plan = plan_of(engraver, frame, width);
    return fixed_height(plan) + least_plot * static_cast<double>(plan.systems);
}

void draw_lean_frame(Page& page, const Engraver& engraver, const LeanFrame& frame, const canvas::Box& box,
                     const DrawColumn& draw_column) {
    const Plan plan = plan_of(engraver, frame, box.width);
    const Millimetres share = (box.height - fixed_height(plan)) / static_cast<double>(plan.systems);
    const Millimetres plot_height = std::max(share, least_plot);
    Millimetres top = box.top + plan.head;
    for (std::size_t s = 0; s < plan.systems; ++s) {
        const std::size_t begin = s * plan.columns;
        const std::size_t end = end_of(plan, frame, s);
        const Millimetres width =
            plan.column_width * static_cast<double>(std::max<std::size_t>(end - begin, 1));
        const Millimetres left = box.left + plan.start;
        const LeanPlot plot{{left, top + number_room, width, plot_height}, frame.range};
        draw_scale(page, engraver, plot, frame.tolerance);
        for (std::size_t i = begin; i < end; ++i) {
            const Millimetres middle = left + plan.column_width * (static_cast<double>(i - begin) + 0.5);
            draw_column(plot, {i, middle, plan.column_width});
        }
        const Millimetres staff_top = plot.box.bottom() + number_room + plot_to_row - plan.rows.at(s).top;
        draw_note_row(page, engraver, part_of(frame.row, begin, end),
                      {frame.row.clef, {box.left, staff_top}, plan.start + width}, left, plan.column_width);
        top = staff_top + plan.rows.at(s).bottom + system_gap;
    }
}

void draw_cut_number(Page& page, const Engraver& engraver, const LeanPlot& plot, Millimetres middle,
                     Cents lean) {
    constexpr Millimetres gap{0.6};
    const bool up = lean > Cents(0.0);
    const Millimetres baseline =
        up ? plot.box.top - gap : plot.box.bottom() + gap + numeral_height(number_style);
    draw_text(page, engraver.faces(), units::signed_text(lean.value(), 0, true), number_style,
              {middle, baseline}, canvas::Align::centre);
}

void draw_legend(Page& page, const canvas::Faces& faces, const std::string& unit,
                 const std::vector<LegendEntry>& entries, const canvas::Box& box) {
    constexpr Millimetres sample_width{1.6};
    constexpr Millimetres sample_height{2.2};
    constexpr Millimetres gap{1.0};
    constexpr Millimetres between{4.0};
    const Millimetres baseline = box.top + units::in_millimetres(chart_text.size);
    const Millimetres middle = baseline - sample_height / 2.0;
    draw_text(page, faces, unit, chart_text, {box.left, baseline}, canvas::Align::left);
    const Millimetres least = box.left + faces.width(unit, chart_text) + between;
    Millimetres right = box.right();
    for (std::size_t i = entries.size(); i > 0; --i) {
        const LegendEntry& entry = entries[i - 1];
        const Millimetres width = faces.width(entry.word, chart_text);
        if (right - width - gap - sample_width < least) return;
        draw_text(page, faces, entry.word, chart_text, {right, baseline}, canvas::Align::right);
        right -= width + gap + sample_width;
        entry.draw_sample(page, {right + sample_width / 2.0, middle});
        right -= between;
    }
}

}  // namespace lowledger::charts
