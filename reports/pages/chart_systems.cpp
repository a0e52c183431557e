#include "reports/pages/chart_systems.h"

#include <algorithm>
#include <cmath>

#include "reports/canvas/text_block.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using horns::ChartNote;
using horns::Way;
using units::Millimetres;
using namespace units::literals;
using words::Sentence;

/// The furthest lean of another way that helps a player.
constexpr auto furthest_alternate = 40_cents;
constexpr auto column_gap = 1.2_mm;
constexpr auto over_gap = 0.8_mm;
constexpr auto under_gap = 0.8_mm;
constexpr auto alternates_gap = 2.2_mm;
constexpr canvas::Stroke hairline{0.15_mm, canvas::Tone::faint};

const tuning::ProfileNote* own_note(const ChartInputs& inputs, units::Pitch note, const Way& way) {
    if (!inputs.horn || way.tone == horns::Tone::false_tone) return nullptr;
    const auto* const own = inputs.horn->profile.way(note, way.fingering);
    return own != nullptr && own->partial == way.partial ? own : nullptr;
}

units::Cents lean_of(const ChartInputs& inputs, units::Pitch note, const Way& way) {
    const auto* const own = own_note(inputs, note, way);
    return own != nullptr ? own->mean : way.lean;
}

/// What the hand slide has to bring in tune: the lean without what the student's arm adds.
units::Cents placed_lean(const ChartInputs& inputs, units::Pitch note, const Way& way) {
    const auto* const own = own_note(inputs, note, way);
    return own != nullptr ? own->placed : way.lean;
}

std::vector<std::string> lines_under(const ChartInputs& inputs, const words::Words& words,
                                     const ChartNote& note) {
    std::vector<std::string> lines;
    if (note.usual.tone == horns::Tone::false_tone) lines.push_back(words.say(Sentence::chart_false));
    if (inputs.kind.hand_slide) {
        const std::string move =
            words::slide_move(inputs.kind, note.usual.fingering, placed_lean(inputs, note.note, note.usual));
        lines.push_back(move.empty() ? move : words.say(Sentence::chart_move, {{"move", move}}));
    }
    const auto* const own = own_note(inputs, note.note, note.usual);
    if (own != nullptr && own->takes > 0)
        lines.push_back(words.say(Sentence::chart_takes, {{"count", std::to_string(own->takes)}}));
    return lines;
}

std::vector<std::string> alternates_of(const ChartInputs& inputs, const ChartNote& note, std::size_t most) {
    std::vector<std::string> lines;
    for (const Way& way : note.alternates) {
        if (lines.size() == most) break;
        const units::Cents lean = lean_of(inputs, note.note, way);
        const bool helps =
            way.within_reach && way.tone != horns::Tone::false_tone && units::abs(lean) <= furthest_alternate;
        if (helps)
            lines.push_back(words::fingering_figure(inputs.kind, way.fingering) + " " +
                            words::cents_text(lean));
    }
    return lines;
}

engraving::NoteRow row_of(std::span<const ChartColumn> columns, horns::Clef clef) {
    engraving::NoteRow row{clef, {}, engraving::Duration::whole};
    for (const ChartColumn& column : columns)
        row.notes.push_back(column.note);
    return row;
}

Millimetres widest_line(const canvas::Faces& faces, std::span<const ChartColumn> columns) {
    Millimetres widest(0.0);
    for (const ChartColumn& column : columns) {
        for (const auto* lines : {&column.over, &column.under, &column.alternates})
            for (const std::string& line : *lines)
                widest = std::max(widest, faces.width(line, type::small));
    }
    return widest;
}

std::size_t most_lines(std::span<const ChartColumn> columns, std::vector<std::string> ChartColumn::*lines) {
    std::size_t most = 0;
    for (const ChartColumn& column : columns)
        most = std::max(most, (column.*lines).size());
    return most;
}

/// Height of so many lines with the gap before them; nothing for none.
Millimetres lines_height(std::size_t count, Millimetres gap) {
    return count == 0 ? 0_mm : gap + static_cast<double>(count) * canvas::leading(type::small);
}

/// Heights of the parts of a system, from its top down.
struct Parts {
    engraving::NoteRowHeights row;
    Millimetres over;
    Millimetres under;
    Millimetres alternates;
};

Parts parts_of(const engraving::Engraver& engraver, std::span<const ChartColumn> columns, horns::Clef clef) {
    return {engraving::row_heights(engraver, row_of(columns, clef)),
            lines_height(most_lines(columns, &ChartColumn::over), over_gap),
            lines_height(most_lines(columns, &ChartColumn::under), under_gap),
            lines_height(most_lines(columns, &ChartColumn::alternates), alternates_gap)};
}

void draw_lines_at(const Sheet& sheet, const std::vector<std::string>& lines, const canvas::TextStyle& style,
                   canvas::Point top_centre) {
    Millimetres y = top_centre.y + canvas::ascent(style);
    for (const std::string& line : lines) {
        if (!line.empty())
            canvas::draw_text(sheet.page, sheet.faces, line, style, {top_centre.x, y}, canvas::Align::centre);
        y += canvas::leading(style);
    }
}

}  // namespace

std::vector<ChartColumn> chart_columns(const ChartInputs& inputs, const words::Speech& speech,
                                       const std::vector<ChartNote>& chart, std::size_t most_alternates) {
    std::vector<ChartColumn> columns;
    for (const ChartNote& note : chart) {
        ChartColumn& column = columns.emplace_back();
        column.note.spelling = horns::spelt(note.note, inputs.style);
        column.note.fingering = words::fingering_figure(inputs.kind, note.usual.fingering);
        column.note.tendency = lean_of(inputs, note.note, note.usual);
        column.over.push_back(words::both_written_names(speech, note.note));
        if (horns::calls_notes_otherwise(inputs.style.reader))
            column.over.push_back("(" + words::tuner_name(note.note, inputs.style) + ")");
        column.under = lines_under(inputs, speech.words, note);
        column.alternates = alternates_of(inputs, note, most_alternates);
    }
    return columns;
}

ChartSystems chart_systems(const std::vector<ChartColumn>& columns, horns::Clef clef,
                           const engraving::Engraver& engraver, Millimetres width) {
    const auto row = row_of(columns, clef);
    const Millimetres narrowest = std::max(engraving::narrowest_column(engraver, row),
                                           widest_line(engraver.faces(), columns) + column_gap);
    ChartSystems all{engraver, clef, width, engraving::first_column(engraver, row), {}, {}};
    const auto most = std::max<std::size_t>(
        1, static_cast<std::size_t>(std::floor((width - all.columns_left) / narrowest)));
    const std::size_t count = (columns.size() + most - 1) / most;
    const std::size_t in_each = (columns.size() + count - 1) / count;
    all.column_width = (width - all.columns_left) / static_cast<double>(in_each);
    for (std::size_t begin = 0; begin < columns.size(); begin += in_each) {
        const auto first = columns.begin() + static_cast<std::ptrdiff_t>(begin);
        const auto last =
            columns.begin() + static_cast<std::ptrdiff_t>(std::min(begin + in_each, columns.size()));
        ChartSystem& system = all.systems.emplace_back();
        system.columns.assign(first, last);
        const Parts parts = parts_of(engraver, system.columns, clef);
        system.height = parts.over + parts.row.height() + parts.under + parts.alternates;
    }
    return all;
}

void draw_system(const Sheet& sheet, const ChartSystems& all, const ChartSystem& system,
                 canvas::Point top_left) {
    const Parts parts = parts_of(all.engraver, system.columns, all.clef);
    const engraving::Staff staff{
        all.clef,
        {top_left.x, top_left.y + parts.over - parts.row.top},
        all.columns_left + static_cast<double>(system.columns.size()) * all.column_width};
    const Millimetres left = top_left.x + all.columns_left;
    engraving::draw_note_row(sheet.page, all.engraver, row_of(system.columns, all.clef), staff, left,
                             all.column_width);
    const Millimetres under = staff.top_left.y + parts.row.bottom + under_gap;
    const Millimetres alternates = staff.top_left.y + parts.row.bottom + parts.under + alternates_gap;
    for (std::size_t i = 0; i < system.columns.size(); ++i) {
        const ChartColumn& column = system.columns[i];
        const Millimetres x = left + (static_cast<double>(i) + 0.5) * all.column_width;
        draw_lines_at(sheet, column.over, type::small, {x, top_left.y});
        draw_lines_at(sheet, column.under, type::small, {x, under});
        draw_lines_at(sheet, column.alternates, type::small, {x, alternates});
    }
    if (parts.alternates > 0_mm) {
        const Millimetres y = alternates - 0.5 * alternates_gap;
        sheet.page.items.emplace_back(canvas::Line{{left, y}, {top_left.x + staff.width, y}, hairline});
    }
}

}  // namespace lowledger::pages
