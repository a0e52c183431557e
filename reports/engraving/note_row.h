#pragma once

#include <optional>
#include <string>
#include <vector>

#include "reports/engraving/engraver.h"

namespace lowledger::engraving {

/// A note of a row: what stands on the staff and under it.
struct RowNote {
    units::Spelling spelling;
    /// "12", "p3"; may be empty.
    std::string fingering;
    /// A fork under the fingering says that it is not the usual one.
    bool alternate = false;
    /// An arrow and a number under all; empty where nothing is said.
    std::optional<units::Cents> tendency;
    bool operator==(const RowNote&) const = default;
};

/// Single notes in equal columns on one staff, as under a chart or on a fingering chart. Notes that would
/// need more than four ledger lines below stand an octave higher over an 8vb line.
struct NoteRow {
    horns::Clef clef = horns::Clef::bass;
    std::vector<RowNote> notes;
    Duration duration = Duration::whole;
};

/// Heights of a row, from the staff's top line down.
struct NoteRowHeights {
    /// Of the highest ink; negative above the top line.
    units::Millimetres top;
    units::Millimetres figure_baseline;
    units::Millimetres fork_top;
    units::Millimetres tendency_top;
    units::Millimetres bottom;
    [[nodiscard]] units::Millimetres height() const { return bottom - top; }
};

NoteRowHeights row_heights(const Engraver& engraver, const NoteRow& row);

/// The least width of a column at which nothing of one note touches the next.
units::Millimetres narrowest_column(const Engraver& engraver, const NoteRow& row);

/// From the staff's left end, past the clef, to the left edge of the first column.
units::Millimetres first_column(const Engraver& engraver, const NoteRow& row);

/// Staff, clef, and note i in the middle of column i; the first column begins at `columns_left`.
void draw_note_row(canvas::Page& page, const Engraver& engraver, const NoteRow& row, const Staff& staff,
                   units::Millimetres columns_left, units::Millimetres column_width);

}  // namespace lowledger::engraving
