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

struct SheetNote {
    /// As the student reads it.
    units::Spelling spelling;
    std::string fingering;
    bool operator==(const SheetNote&) const = default;
};

/// What one tuning sheet says of each note of a chart, in the chart's order; empty where it was not played.
struct SheetLeans {
    /// Its date or name for the legend.
    std::string label;
    std::vector<std::optional<units::Cents>> leans;
    bool operator==(const SheetLeans&) const = default;
};

/// Several sheets of one student on one horn in one chart.
struct SheetChart {
    horns::Clef clef = horns::Clef::bass;
    /// In the order of pitch.
    std::vector<SheetNote> notes;
    /// Oldest first.
    std::vector<SheetLeans> sheets;
    /// The pale band each side of zero.
    units::Cents tolerance{10.0};
    /// "cents"; may be empty.
    std::string unit;
    bool operator==(const SheetChart&) const = default;
};

/// The height it likes at a width, all systems together.
units::Millimetres sheet_chart_height(const engraving::Engraver& engraver, const SheetChart& chart,
                                      units::Millimetres width);

/// Each note's column is its own small history from left to right: the newest sheet a full dot, the one
/// before a ring, older ones ever smaller and faint, joined by a thin line. The legend names the oldest, the
/// one before and the newest. Throws Refusal where one column is wider than the box, or a sheet has not one
/// value (or none) for each note.
void draw_sheets_over_time(canvas::Page& page, const engraving::Engraver& engraver, const SheetChart& chart,
                           const canvas::Box& box);

/// Two bars for each note: hollow for the first sheet, filled for the second. Throws as above, and Refusal
/// unless there are two sheets.
void draw_two_sheets(canvas::Page& page, const engraving::Engraver& engraver, const SheetChart& chart,
                     const canvas::Box& box);

}  // namespace lowledger::charts
