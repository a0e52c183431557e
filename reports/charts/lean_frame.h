#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "model/units/quantity.h"
#include "reports/canvas/page.h"
#include "reports/engraving/engraver.h"
#include "reports/engraving/note_row.h"

namespace lowledger::charts {

/// What all charts of leans share: columns of notes over a staff, in as many systems as they take, with a
/// scale in cents, the tolerance as a pale band and a line for a legend.
struct LeanFrame {
    engraving::NoteRow row;
    units::Cents tolerance;
    /// Half of the scale.
    units::Cents range;
    bool legend = false;
};

/// The least of 20, 30, 40 and 50 cents that holds `most`, or the last.
units::Cents scale_for(units::Cents most);

/// The plot of one system.
struct LeanPlot {
    canvas::Box box;
    units::Cents range;
    [[nodiscard]] units::Millimetres y_of(units::Cents lean) const;
    /// The lean as far as the scale goes.
    [[nodiscard]] units::Cents cut(units::Cents lean) const;
};

/// Where a note's column stands in its plot.
struct LeanColumn {
    std::size_t note = 0;
    units::Millimetres middle;
    units::Millimetres width;
};

std::size_t systems_needed(const engraving::Engraver& engraver, const LeanFrame& frame,
                           units::Millimetres width);
units::Millimetres frame_height(const engraving::Engraver& engraver, const LeanFrame& frame,
                                units::Millimetres width);
units::Millimetres least_frame_height(const engraving::Engraver& engraver, const LeanFrame& frame,
                                      units::Millimetres width);

using DrawColumn = std::function<void(const LeanPlot&, const LeanColumn&)>;

/// Draws scales and staves into the box and each column through `draw_column`, as `draw_lean_chart` says.
void draw_lean_frame(canvas::Page& page, const engraving::Engraver& engraver, const LeanFrame& frame,
                     const canvas::Box& box, const DrawColumn& draw_column);

/// The number at the end of a bar or by a dot that the scale cuts.
void draw_cut_number(canvas::Page& page, const engraving::Engraver& engraver, const LeanPlot& plot,
                     units::Millimetres middle, units::Cents lean);

/// The small faint text of scales and legends.
inline constexpr canvas::TextStyle chart_text{units::Points(7.0), canvas::Weight::regular,
                                              canvas::Tone::faint};

/// One sign of a legend with its word.
struct LegendEntry {
    std::string word;
    /// Draws the sample centred at a point.
    std::function<void(canvas::Page&, canvas::Point)> draw_sample;
};

/// The unit at the box's left, the entries at its right, in one line; entries that find no room are left out,
/// first ones first.
void draw_legend(canvas::Page& page, const canvas::Faces& faces, const std::string& unit,
                 const std::vector<LegendEntry>& entries, const canvas::Box& box);

}  // namespace lowledger::charts
