#include "reports/pages/settings_table.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "reports/canvas/table.h"
#include "reports/pages/handout_parts.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using canvas::Box;
using tuning::Advice;
using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr std::string_view no_such_slide = "\u2013";

/// A valve's slide by the valve's label, any other by its name.
std::string column_head(const horns::HornKind& kind, const horns::SlideKind& slide) {
    if (!slide.valve) return slide_title(kind, slide.id);
    return words::fingering_label(kind, {acoustics::ValveSet{*slide.valve}, 0});
}

/// Every slide of the rows' kinds once: id and what heads its column, in the order the kinds have them.
std::vector<std::pair<std::string, std::string>> slide_columns(std::span<const HandoutInputs> rows) {
    std::vector<std::pair<std::string, std::string>> columns;
    for (const HandoutInputs& row : rows) {
        for (const auto& slide : row.kind.slides) {
            const auto is_same = [&](const auto& column) { return column.first == slide.id; };
            if (std::none_of(columns.begin(), columns.end(), is_same)) {
                columns.emplace_back(slide.id, column_head(row.kind, slide));
            }
        }
    }
    return columns;
}

std::string whole(Millimetres length) {
    return std::to_string(std::lround(length.value()));
}

std::string held_cell(const words::Words& words, const tuning::SlideAnswer& slide, bool stuck) {
    if (!slide.position_known)
        return words.say(stuck ? Sentence::table_stuck_here : Sentence::table_leave_here);
    return words.say(stuck ? Sentence::table_stuck : Sentence::table_held, {{"position", whole(slide.now)}});
}

std::string slide_cell(const words::Words& words, const HandoutInputs& row, const std::string& id) {
    const auto* const slide = slide_answer(row.answer, id);
    if (slide == nullptr) return std::string(no_such_slide);
    if (slide->advice == Advice::fixed) return held_cell(words, *slide, is_stuck(row.horn, id));
    const Millimetres change = slide->recommended - slide->now;
    const bool moves = slide->advice == Advice::move && abs(change) >= 0.5_mm;
    if (!moves) {
        return slide->position_known ? words.say(Sentence::table_at, {{"position", whole(slide->now)}})
                                     : words.say(Sentence::table_leave_here);
    }
    if (!slide->position_known) {
        return words.say(change > 0_mm ? Sentence::table_pull : Sentence::table_push,
                         {{"change", whole(abs(change))}});
    }
    return words.say(Sentence::table_move, {{"from", whole(slide->now)}, {"to", whole(slide->recommended)}});
}

std::string horn_cell(const HandoutInputs& row) {
    return row.horn.mark.empty() ? words::kind_name(row.kind) : row.horn.mark;
}

std::string remarks_cell(const words::Words& words, const HandoutInputs& row) {
    if (row.answer.profile.takes_used == 0) return words.say(Sentence::table_nothing);
    if (!row.answer.enough.tuning_notes_in()) {
        return words.say(Sentence::table_missing,
                         {{"notes", words::missing_notes(speech_of(row, words), row.answer)}});
    }
    const auto& slides = row.answer.settings.slides;
    const bool all_known =
        std::all_of(slides.begin(), slides.end(), [](const auto& slide) { return slide.position_known; });
    return all_known ? std::string() : words.say(Sentence::table_unknown);
}

canvas::Table table_of(std::span<const HandoutInputs> rows, const words::Words& words) {
    canvas::Table table;
    table.head = type::strong;
    table.body = type::body;
    const auto slides = slide_columns(rows);
    table.columns.push_back({words.say(Sentence::table_student), canvas::Align::left, 0.0});
    table.columns.push_back({words.say(Sentence::table_horn), canvas::Align::left, 0.0});
    for (const auto& slide : slides)
        table.columns.push_back({slide.second, canvas::Align::right, 0.0});
    table.columns.push_back({words.say(Sentence::table_remarks), canvas::Align::left, 1.0});
    for (const HandoutInputs& row : rows) {
        auto& cells = table.rows.emplace_back();
        cells = {row.student.name, horn_cell(row)};
        for (const auto& slide : slides)
            cells.push_back(slide_cell(words, row, slide.first));
        cells.push_back(remarks_cell(words, row));
    }
    return table;
}

/// Title and what the table is of; returns the y below.
Millimetres draw_title(const Sheet& sheet, const std::string& of, const Box& live) {
    Millimetres y = canvas::draw_block(sheet.page, sheet.faces, sheet.words.say(Sentence::table_title),
                                       type::title, {live.left, live.top}, live.width);
    y = canvas::draw_block(sheet.page, sheet.faces, of, type::lead, {live.left, y}, live.width);
    return canvas::draw_block(sheet.page, sheet.faces, sheet.words.say(Sentence::table_how), type::body,
                              {live.left, y + 1_mm}, live.width) +
           part_gap;
}

void draw_page_number(const Sheet& sheet, std::size_t number, std::size_t of, const Box& live) {
    canvas::draw_text(sheet.page, sheet.faces,
                      sheet.words.say(Sentence::page_number,
                                      {{"number", std::to_string(number)}, {"of", std::to_string(of)}}),
                      type::small, {live.right(), live.bottom()}, canvas::Align::right);
}

}  // namespace

canvas::Document settings_table(std::span<const HandoutInputs> rows, const studio::StudioFacts& facts,
                                studio::Date date, const PageStyle& style, const words::Words& words,
                                const canvas::Faces& faces) {
    canvas::Document document;
    document.title = words.say(Sentence::table_title);
    document.author = facts.teacher;
    const canvas::Size upright = layout_size(style);
    const canvas::Size size{upright.height, upright.width};
    const Box live = canvas::live_area(size);
    const Millimetres bottom = live.bottom() - 2.0 * canvas::leading(type::small);
    const std::string of = facts.name.empty()
                               ? words::date_text(words, date)
                               : words.say(Sentence::table_of,
                                           {{"studio", facts.name}, {"date", words::date_text(words, date)}});

    document.pages.push_back({size, {}});
    Millimetres y = draw_title({document.pages.back(), faces, words}, of, live);
    if (rows.empty()) {
        canvas::draw_block(document.pages.back(), faces, words.say(Sentence::table_none), type::body,
                           {live.left, y}, live.width);
        return printed(std::move(document), style);
    }
    const auto table = canvas::measured(faces, table_of(rows, words), live.width);
    std::optional<canvas::TablePlace> from = canvas::TablePlace{};
    while (true) {
        from = canvas::draw_table(document.pages.back(), faces, table, {live.left, y}, bottom, *from).rest;
        if (!from) break;
        document.pages.push_back({size, {}});
        y = live.top;
    }
    document.bookmarks = {{document.title, 0}};
    for (std::size_t i = 0; i < document.pages.size() && document.pages.size() > 1; ++i)
        draw_page_number({document.pages[i], faces, words}, i + 1, document.pages.size(), live);
    return printed(std::move(document), style);
}

}  // namespace lowledger::pages
