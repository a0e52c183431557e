#include "reports/pages/tuning_form.h"

#include <algorithm>
#include <string>

#include "reports/canvas/text_block.h"
#include "reports/pages/flow.h"
#include "reports/pages/reading_blanks.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr auto label_width = 8_mm;
constexpr auto date_width = 32_mm;
constexpr auto head_height = 9_mm;
constexpr auto slides_gap = 3_mm;
constexpr auto slide_row = 8_mm;
constexpr auto slide_blank = 14_mm;
constexpr auto form_gap = 9_mm;
constexpr std::size_t slides_in_row = 4;

std::size_t slide_rows(const horns::HornKind& kind) {
    return (kind.slides.size() + slides_in_row - 1) / slides_in_row;
}

Millimetres slides_height(const horns::HornKind& kind) {
    return slides_gap + canvas::leading(type::small) + static_cast<double>(slide_rows(kind)) * slide_row;
}

void draw_form_head(const Sheet& sheet, const Player& player, canvas::Point at, Millimetres width) {
    const Millimetres baseline = at.y + canvas::ascent(type::heading);
    const std::string date = sheet.words.say(Sentence::form_date);
    const Millimetres line_left = at.x + width - date_width;
    draw_writing_line(sheet, {line_left, baseline + 0.8_mm}, date_width);
    canvas::draw_text(sheet.page, sheet.faces, date, type::small, {line_left - 1.5_mm, baseline},
                      canvas::Align::right);
    Millimetres room = line_left - sheet.faces.width(date, type::small) - 6_mm - at.x;
    const std::string name = canvas::shortened(sheet.faces, player.student.name, type::heading, room);
    canvas::draw_text(sheet.page, sheet.faces, name, type::heading, {at.x, baseline});
    const Millimetres taken = sheet.faces.width(name, type::heading) + 4_mm;
    room = room - taken;
    if (room < 12_mm) return;
    const std::string kind = words::kind_name(player.kind);
    const std::string horn =
        player.horn.mark.empty()
            ? kind
            : sheet.words.say(Sentence::handout_horn, {{"kind", kind}, {"mark", player.horn.mark}});
    canvas::draw_text(sheet.page, sheet.faces, canvas::shortened(sheet.faces, horn, type::body, room),
                      type::body, {at.x + taken, baseline});
}

void draw_slides(const Sheet& sheet, const horns::HornKind& kind, canvas::Point at, Millimetres width) {
    canvas::draw_text(sheet.page, sheet.faces, sheet.words.say(Sentence::form_slides), type::small_strong,
                      {at.x, at.y + canvas::ascent(type::small)});
    const Millimetres top = at.y + canvas::leading(type::small);
    const Millimetres cell = width / static_cast<double>(slides_in_row);
    for (std::size_t i = 0; i < kind.slides.size(); ++i) {
        const Millimetres left = at.x + static_cast<double>(i % slides_in_row) * cell;
        const std::size_t row = i / slides_in_row;
        const Millimetres y = top + static_cast<double>(row + 1) * slide_row - 1_mm;
        const std::string name = canvas::shortened(sheet.faces, words::capitalised(kind.slides[i].name),
                                                   type::small, cell - slide_blank - 5_mm);
        canvas::draw_text(sheet.page, sheet.faces, name, type::small, {left, y});
        draw_writing_line(sheet, {left + cell - slide_blank - 3_mm, y + 0.4_mm}, slide_blank);
    }
}

std::vector<NoteToPlay> tuning_notes(const horns::HornKind& kind) {
    std::vector<NoteToPlay> notes;
    for (const horns::TuningStep& step : kind.tuning_order)
        notes.push_back({step.note, step.fingering});
    return notes;
}

void add_form(Flow& flow, const Player& player, const studio::StudioFacts& facts, const words::Words& words) {
    const ReadingBlanks blanks{player.kind,
                               note_style(facts, player),
                               tuning_notes(player.kind),
                               {words.say(Sentence::blank_first), words.say(Sentence::blank_second)},
                               label_width};
    const Millimetres readings = reading_blanks_height(flow.sheet(), blanks);
    const canvas::Point at = flow.place(head_height + readings + slides_height(player.kind), form_gap);
    const Millimetres width = flow.live().width;
    draw_form_head(flow.sheet(), player, at, width);
    draw_reading_blanks(flow.sheet(), blanks, {at.x, at.y + head_height}, width);
    draw_slides(flow.sheet(), player.kind, {at.x, at.y + head_height + readings + slides_gap}, width);
}

}  // namespace

canvas::Document tuning_forms(std::span<const Player> players, const studio::StudioFacts& facts,
                              studio::Date date, const PageStyle& style, const words::Words& words,
                              const canvas::Faces& faces) {
    Flow flow(words.say(Sentence::form_title), style, words, faces);
    flow.head(facts, date, words.say(players.empty() ? Sentence::form_none : Sentence::form_how));
    for (const Player& player : players)
        add_form(flow, player, facts, words);
    return flow.finished(facts, date);
}

}  // namespace lowledger::pages
