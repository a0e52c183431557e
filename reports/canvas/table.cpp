#include "reports/canvas/table.h"

#include <algorithm>
#include <numeric>
#include <stdexcept>

namespace lowledger::canvas {
namespace {

using units::Millimetres;

constexpr Millimetres above_row{0.8};
constexpr Millimetres below_row{0.5};
constexpr Stroke head_rule{Millimetres(0.25), Tone::ink};
constexpr Stroke row_rule{Millimetres(0.1), Tone::faint};
/// Sums of heights.
constexpr Millimetres rounding{1e-6};

/// The widest line of a text that is not wrapped.
Millimetres natural_width(const Faces& faces, std::string_view text, const TextStyle& style) {
    Millimetres widest;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        widest = std::max(widest, faces.width(text.substr(0, end), style));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return widest;
}

std::vector<Millimetres> natural_widths(const Faces& faces, const Table& table) {
    std::vector<Millimetres> widths;
    for (const Column& column : table.columns)
        widths.push_back(natural_width(faces, column.head, table.head));
    for (const auto& row : table.rows) {
        if (row.size() > widths.size())
            throw std::invalid_argument("a table's row has more cells than columns");
        for (std::size_t i = 0; i < row.size(); ++i)
            widths[i] = std::max(widths[i], natural_width(faces, row[i], table.body));
    }
    return widths;
}

Millimetres sum(const std::vector<Millimetres>& widths) {
    return std::accumulate(widths.begin(), widths.end(), Millimetres());
}

/// Cuts the widest columns to one width, so that all have `room` together and the narrow ones stay.
void cut_widest(std::vector<Millimetres>& widths, Millimetres room) {
    std::vector<Millimetres> sorted = widths;
    std::sort(sorted.begin(), sorted.end());
    for (std::size_t narrow = 0; narrow < sorted.size(); ++narrow) {
        const Millimetres limit = room / static_cast<double>(sorted.size() - narrow);
        if (sorted[narrow] >= limit) {
            for (Millimetres& width : widths)
                width = std::min(width, limit);
            return;
        }
        room -= sorted[narrow];
    }
}

void share_out(std::vector<Millimetres>& widths, Millimetres spare, const std::vector<Column>& columns) {
    double shares = 0.0;
    for (const Column& column : columns)
        shares += column.share;
    if (shares <= 0.0) return;
    for (std::size_t i = 0; i < widths.size(); ++i)
        widths[i] += spare * (columns[i].share / shares);
}

std::size_t line_count(const std::vector<MeasuredTable::Cell>& row) {
    std::size_t lines = 1;
    for (const auto& cell : row)
        lines = std::max(lines, cell.size());
    return lines;
}

Millimetres row_height(std::size_t lines, const TextStyle& style) {
    return above_row + leading(style) * static_cast<double>(lines) + below_row;
}

/// Lines `first` up to `last` of a row, with the rule under them; returns the y below.
Millimetres draw_row(Page& page, const Faces& faces, const MeasuredTable& table,
                     const std::vector<MeasuredTable::Cell>& row, const TextStyle& style, const Stroke& rule,
                     Point top_left, std::size_t first, std::size_t last) {
    for (std::size_t i = 0; i < row.size(); ++i) {
        const auto& cell = row[i];
        const auto from = cell.begin() + static_cast<std::ptrdiff_t>(std::min(first, cell.size()));
        const auto to = cell.begin() + static_cast<std::ptrdiff_t>(std::min(last, cell.size()));
        const auto& column = table.columns[i];
        draw_lines(page, faces, {from, to}, style, {top_left.x + column.left, top_left.y + above_row},
                   column.width, column.align);
    }
    const Millimetres below = top_left.y + row_height(last - first, style);
    page.items.emplace_back(Line{{top_left.x, below}, {top_left.x + table.width, below}, rule});
    return below;
}

}  // namespace

MeasuredTable measured(const Faces& faces, const Table& table, Millimetres width) {
    std::vector<Millimetres> widths = natural_widths(faces, table);
    const double gaps = widths.empty() ? 0.0 : static_cast<double>(widths.size() - 1);
    const Millimetres room = width - table.gap * gaps;
    if (sum(widths) > room)
        cut_widest(widths, room);
    else
        share_out(widths, room - sum(widths), table.columns);

    MeasuredTable result{sum(widths) + table.gap * gaps, table.head, table.body, {}, {}, {}};
    Millimetres left;
    for (std::size_t i = 0; i < widths.size(); ++i) {
        result.columns.push_back({left, widths[i], table.columns[i].align});
        result.head.push_back(wrapped(faces, table.columns[i].head, table.head, widths[i]));
        left += widths[i] + table.gap;
    }
    for (const auto& row : table.rows) {
        auto& cells = result.rows.emplace_back();
        for (std::size_t i = 0; i < row.size(); ++i)
            cells.push_back(wrapped(faces, row[i], table.body, widths[i]));
    }
    return result;
}

Millimetres least_height(const MeasuredTable& table, TablePlace from) {
    const Millimetres head = row_height(line_count(table.head), table.head_style);
    if (from.row >= table.rows.size()) return head;
    // Two lines, lest a row leave a single one behind.
    const std::size_t lines = std::min<std::size_t>(2, line_count(table.rows[from.row]) - from.line);
    return head + row_height(lines, table.body_style);
}

TablePart draw_table(Page& page, const Faces& faces, const MeasuredTable& table, Point top_left,
                     Millimetres bottom, TablePlace from) {
    Point at = top_left;
    at.y =
        draw_row(page, faces, table, table.head, table.head_style, head_rule, at, 0, line_count(table.head));
    bool is_first = true;
    for (std::size_t i = from.row; i < table.rows.size(); ++i) {
        const std::size_t first = i == from.row ? from.line : 0;
        const std::size_t lines = line_count(table.rows[i]);
        const auto fits = [&](std::size_t last) {
            return at.y + row_height(last - first, table.body_style) <= bottom + rounding;
        };
        std::size_t last = lines;
        if (!fits(lines)) {
            if (!is_first) return {at.y, TablePlace{i, first}};
            while (last > first + 1 && !fits(last))
                --last;
        }
        at.y = draw_row(page, faces, table, table.rows[i], table.body_style, row_rule, at, first, last);
        if (last < lines) return {at.y, TablePlace{i, last}};
        is_first = false;
    }
    return {at.y, std::nullopt};
}

}  // namespace lowledger::canvas
