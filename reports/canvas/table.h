#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/canvas/text_block.h"

namespace lowledger::canvas {

struct Column {
    std::string head;
    /// Numbers stand right.
    Align align = Align::left;
    /// What part of the width that is left over goes to this column, against the other columns' parts.
    double share = 0.0;
};

struct Table {
    std::vector<Column> columns;
    /// A cell a column, in order; a short row ends in empty cells.
    std::vector<std::vector<std::string>> rows;
    TextStyle head{units::Points(9.0), Weight::bold, Tone::ink};
    TextStyle body{units::Points(10.0), Weight::regular, Tone::ink};
    /// Between two columns.
    units::Millimetres gap{4.0};
};

/// A table measured for one width: every cell as the lines it is drawn in.
struct MeasuredTable {
    using Cell = std::vector<std::string>;
    struct Span {
        units::Millimetres left;
        units::Millimetres width;
        Align align = Align::left;
    };
    units::Millimetres width;
    TextStyle head_style;
    TextStyle body_style;
    std::vector<Span> columns;
    std::vector<Cell> head;
    std::vector<std::vector<Cell>> rows;
};

/// Every column is as wide as its widest cell if they all fit; otherwise the widest give way first and wrap.
/// Throws std::invalid_argument for a row with more cells than there are columns.
MeasuredTable measured(const Faces& faces, const Table& table, units::Millimetres width);

/// Where a table goes on.
struct TablePlace {
    std::size_t row = 0;
    /// Of the row's cells: a row that is higher than a page goes on in the midst.
    std::size_t line = 0;
    bool operator==(const TablePlace&) const = default;
};

/// What the head and the first lines at `from` take; a caller with less room starts a new page.
units::Millimetres least_height(const MeasuredTable& table, TablePlace from = {});

struct TablePart {
    /// The y below what was drawn.
    units::Millimetres below;
    /// Empty when all is drawn.
    std::optional<TablePlace> rest;
};

/// Draws the head and, from `from` on, the rows that fit above `bottom`. A row stays whole unless it would
/// be the first here. At least one line is drawn, so that a loop over new pages ends.
TablePart draw_table(Page& page, const Faces& faces, const MeasuredTable& table, Point top_left,
                     units::Millimetres bottom, TablePlace from = {});

}  // namespace lowledger::canvas
