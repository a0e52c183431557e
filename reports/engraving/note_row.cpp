#include "reports/engraving/note_row.h"

#include <algorithm>

namespace lowledger::engraving {
namespace {

using canvas::Page;
using units::Millimetres;

constexpr StaffSpaces column_gap{0.5};
constexpr StaffSpaces figure_gap{0.8};
constexpr StaffSpaces after_clef{1.0};
constexpr StaffSpaces clef_inset{0.6};
constexpr StaffSpaces row_gap{0.7};
/// More under an 8vb sign, so that it is not read together with the figure below it.
constexpr StaffSpaces under_octave_sign{0.5};
/// Height of a figure (a numeral of Noto Sans) as a share of its type size.
constexpr double numeral_height = 0.72;

Note note_of(const NoteRow& row, const RowNote& note) {
    return {note.spelling, row.duration, AccidentalMark::as_spelled,
            reads_better_8va_bassa(position_of(row.clef, note.spelling))};
}

/// Half the width of what stands under a note.
Millimetres half_under(const Engraver& engraver, const RowNote& note) {
    Millimetres width = engraver.faces().width(note.fingering, engraver.figure_style());
    if (note.alternate) width = std::max(width, engraver.fork_size().width);
    if (note.tendency) width = std::max(width, engraver.tendency_size(*note.tendency).width);
    return width / 2.0;
}

/// Notes that follow each other under one 8vb line: first and one past the last.
struct Run {
    std::size_t begin;
    std::size_t end;
};

std::vector<Run> octave_runs(const NoteRow& row) {
    std::vector<Run> runs;
    for (std::size_t i = 0; i < row.notes.size(); ++i) {
        if (!note_of(row, row.notes[i]).octave_up) continue;
        if (!runs.empty() && runs.back().end == i) {
            runs.back().end = i + 1;
        } else {
            runs.push_back({i, i + 1});
        }
    }
    return runs;
}

/// Top of the 8vb sign, below the staff, its run and the note that the sign may reach under.
Millimetres octave_sign_top(const Engraver& engraver, const NoteRow& row, const Run& run) {
    Millimetres lowest = engraver.staff_height();
    for (std::size_t i = run.begin; i < std::min(run.end + 1, row.notes.size()); ++i)
        lowest = std::max(lowest, engraver.note_extent(row.clef, note_of(row, row.notes[i])).bottom);
    return lowest + engraver.length(row_gap);
}

/// Ink of the clef and the notes without what stands under them.
std::pair<Millimetres, Millimetres> ink_of_notes(const Engraver& engraver, const NoteRow& row) {
    const Symbol clef = row.clef == horns::Clef::treble ? Symbol::g_clef
                        : row.clef == horns::Clef::bass ? Symbol::f_clef
                                                        : Symbol::c_clef;
    const InkBox& ink = engraver.symbols().ink(clef);
    const StaffSpaces line((top_line.half_spaces - line_of_clef(row.clef).half_spaces) / 2.0);
    const Millimetres half_line = engraver.staff_line() / 2.0;
    Millimetres top = std::min(engraver.length(line - ink.top), -half_line);
    Millimetres bottom = std::max(engraver.length(line - ink.bottom), engraver.staff_height() + half_line);
    for (const RowNote& note : row.notes) {
        const Extent extent = engraver.note_extent(row.clef, note_of(row, note));
        top = std::min(top, extent.top);
        bottom = std::max(bottom, extent.bottom);
    }
    for (const Run& run : octave_runs(row))
        bottom = std::max(bottom, octave_sign_top(engraver, row, run) + engraver.ottava_bassa_height() +
                                      engraver.length(under_octave_sign));
    return {top, bottom};
}

bool any(const NoteRow& row, bool (*has)(const RowNote&)) {
    return std::any_of(row.notes.begin(), row.notes.end(), has);
}

}  // namespace

NoteRowHeights row_heights(const Engraver& engraver, const NoteRow& row) {
    NoteRowHeights heights;
    const auto [top, notes_bottom] = ink_of_notes(engraver, row);
    const Millimetres gap = engraver.length(row_gap);
    heights.top = top;
    heights.bottom = notes_bottom;
    heights.figure_baseline = heights.fork_top = heights.tendency_top = notes_bottom;
    if (any(row, [](const RowNote& n) { return !n.fingering.empty(); })) {
        const Millimetres numerals = units::in_millimetres(engraver.figure_style().size) * numeral_height;
        heights.figure_baseline = heights.bottom + gap + numerals;
        heights.bottom = heights.figure_baseline;
    }
    if (any(row, [](const RowNote& n) { return n.alternate; })) {
        heights.fork_top = heights.bottom + gap;
        heights.bottom = heights.fork_top + engraver.fork_size().height;
    }
    if (any(row, [](const RowNote& n) { return n.tendency.has_value(); })) {
        heights.tendency_top = heights.bottom + gap;
        heights.bottom = heights.tendency_top + engraver.tendency_size(units::Cents(10.0)).height;
    }
    return heights;
}

Millimetres narrowest_column(const Engraver& engraver, const NoteRow& row) {
    Millimetres widest(0.0);
    for (std::size_t i = 0; i < row.notes.size(); ++i) {
        const Extent extent = engraver.note_extent(row.clef, note_of(row, row.notes[i]));
        const Millimetres half = half_under(engraver, row.notes[i]);
        widest = std::max(widest, half * 2.0 + engraver.length(figure_gap));
        if (i + 1 == row.notes.size()) break;
        const Extent next = engraver.note_extent(row.clef, note_of(row, row.notes[i + 1]));
        const Millimetres next_half = half_under(engraver, row.notes[i + 1]);
        widest = std::max(widest, extent.right + next.left + engraver.length(column_gap));
        widest = std::max(widest, half + next_half + engraver.length(figure_gap));
    }
    return widest;
}

Millimetres first_column(const Engraver& engraver, const NoteRow& row) {
    Millimetres start = engraver.length(clef_inset + after_clef) + engraver.clef_width(row.clef);
    if (!row.notes.empty()) {
        const Millimetres left = engraver.note_extent(row.clef, note_of(row, row.notes.front())).left;
        start += std::max(left - narrowest_column(engraver, row) / 2.0, Millimetres(0.0));
    }
    return start;
}

void draw_note_row(Page& page, const Engraver& engraver, const NoteRow& row, const Staff& staff,
                   Millimetres columns_left, Millimetres column_width) {
    const NoteRowHeights heights = row_heights(engraver, row);
    const auto anchor = [&](std::size_t i) {
        return columns_left + column_width * (static_cast<double>(i) + 0.5);
    };
    const Millimetres top = staff.top_left.y;
    engraver.draw_staff(page, staff);
    engraver.draw_clef(page, staff, staff.top_left.x + engraver.length(clef_inset));
    for (std::size_t i = 0; i < row.notes.size(); ++i) {
        const RowNote& note = row.notes[i];
        engraver.draw_note(page, staff, note_of(row, note), anchor(i));
        if (!note.fingering.empty()) {
            engraver.draw_figure(page, note.fingering, {anchor(i), top + heights.figure_baseline});
        }
        if (note.alternate) engraver.draw_fork(page, {anchor(i), top + heights.fork_top});
        if (note.tendency) {
            engraver.draw_tendency(page, *note.tendency, {anchor(i), top + heights.tendency_top});
        }
    }
    for (const Run& run : octave_runs(row)) {
        const auto extent = [&](std::size_t i) {
            return engraver.note_extent(row.clef, note_of(row, row.notes[i]));
        };
        engraver.draw_ottava_bassa(page, anchor(run.begin) - extent(run.begin).left,
                                   anchor(run.end - 1) + extent(run.end - 1).right,
                                   top + octave_sign_top(engraver, row, run));
    }
}

}  // namespace lowledger::engraving
