#include "reports/pages/reading_blanks.h"

#include <algorithm>

#include "reports/canvas/text_block.h"
#include "reports/engraving/note_row.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr auto staff_space = 1.4_mm;
constexpr auto names_gap = 1_mm;
constexpr auto row_height = 8.5_mm;
constexpr auto between_blanks = 4_mm;
constexpr auto widest_blank = 20_mm;

engraving::NoteRow row_of(const ReadingBlanks& blanks) {
    engraving::NoteRow row;
    row.clef = blanks.style.reader.clef;
    for (const NoteToPlay& note : blanks.notes)
        row.notes.push_back({horns::spelt(note.note, blanks.style),
                             words::fingering_figure(blanks.kind, note.fingering), false, std::nullopt});
    return row;
}

std::vector<std::string> names_over(const Sheet& sheet, const ReadingBlanks& blanks, units::Pitch note) {
    std::vector<std::string> names = {words::note_name(note, blanks.style)};
    if (horns::calls_notes_otherwise(blanks.style.reader))
        names.push_back(
            sheet.words.say(Sentence::form_tuner_name, {{"tuner", words::tuner_name(note, blanks.style)}}));
    return names;
}

Millimetres names_height(const ReadingBlanks& blanks) {
    const double lines = horns::calls_notes_otherwise(blanks.style.reader) ? 2.0 : 1.0;
    return lines * canvas::leading(type::small) + names_gap;
}

}  // namespace

void draw_writing_line(const Sheet& sheet, canvas::Point left_end, Millimetres width) {
    sheet.page.items.emplace_back(canvas::Line{left_end, {left_end.x + width, left_end.y}, {0.2_mm}});
}

Millimetres reading_blanks_height(const Sheet& sheet, const ReadingBlanks& blanks) {
    const engraving::Engraver engraver(sheet.faces, staff_space);
    return names_height(blanks) + engraving::row_heights(engraver, row_of(blanks)).height() +
           static_cast<double>(blanks.rows.size()) * row_height;
}

void draw_reading_blanks(const Sheet& sheet, const ReadingBlanks& blanks, canvas::Point top_left,
                         Millimetres width) {
    if (blanks.notes.empty()) return;
    const engraving::Engraver engraver(sheet.faces, staff_space);
    const auto row = row_of(blanks);
    const auto heights = engraving::row_heights(engraver, row);
    const Millimetres staff_left = top_left.x + blanks.label_width;
    const Millimetres staff_top = top_left.y + names_height(blanks) - heights.top;
    const engraving::Staff staff{row.clef, {staff_left, staff_top}, width - blanks.label_width};
    const Millimetres first = staff_left + engraving::first_column(engraver, row);
    const Millimetres column = (top_left.x + width - first) / static_cast<double>(blanks.notes.size());
    engraving::draw_note_row(sheet.page, engraver, row, staff, first, column);

    const Millimetres blank = std::min(column - between_blanks, widest_blank);
    for (std::size_t i = 0; i < blanks.notes.size(); ++i) {
        const Millimetres middle = first + (static_cast<double>(i) + 0.5) * column;
        Millimetres y = top_left.y + canvas::ascent(type::small);
        for (const std::string& name : names_over(sheet, blanks, blanks.notes[i].note)) {
            canvas::draw_text(sheet.page, sheet.faces, name, type::small, {middle, y}, canvas::Align::centre);
            y += canvas::leading(type::small);
        }
        for (std::size_t line = 1; line <= blanks.rows.size(); ++line)
            draw_writing_line(
                sheet,
                {middle - 0.5 * blank, staff_top + heights.bottom + static_cast<double>(line) * row_height},
                blank);
    }
    for (std::size_t line = 0; line < blanks.rows.size(); ++line)
        canvas::draw_text(
            sheet.page, sheet.faces, blanks.rows[line], type::small,
            {first - 2_mm, staff_top + heights.bottom + static_cast<double>(line + 1) * row_height - 0.4_mm},
            canvas::Align::right);
}

}  // namespace lowledger::pages
