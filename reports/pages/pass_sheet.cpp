#include "reports/pages/pass_sheet.h"

#include "model/horns/section_notes.h"
#include "reports/canvas/text_block.h"
#include "reports/pages/flow.h"
#include "reports/pages/reading_blanks.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr double share_of_name = 0.3;
constexpr auto row_gap = 5_mm;

std::vector<NoteToPlay> notes_for(const horns::HornKind& kind, std::span<const units::Pitch> notes) {
    std::vector<NoteToPlay> own;
    for (const auto& charted : horns::section_notes(kind, notes))
        if (charted) own.push_back({charted->note, charted->usual.fingering});
    return own;
}

void draw_player(const Sheet& sheet, const Player& player, canvas::Point at, Millimetres width) {
    const auto lines = [&](const std::string& text, const canvas::TextStyle& style, Millimetres y) {
        auto wrapped = canvas::wrapped(sheet.faces, text, style, width);
        if (wrapped.size() > 2) {
            wrapped.resize(2);
            wrapped.back() = canvas::shortened(sheet.faces, wrapped.back() + " \u2026", style, width);
        }
        return canvas::draw_lines(sheet.page, sheet.faces, wrapped, style, {at.x, y}, width);
    };
    const Millimetres y = lines(player.student.name, type::strong, at.y);
    const std::string horn = player.horn.mark.empty() ? words::kind_name(player.kind) : player.horn.mark;
    lines(horn, type::small, y);
}

}  // namespace

canvas::Document pass_sheet(std::span<const Player> players, std::span<const units::Pitch> notes,
                            const studio::StudioFacts& facts, studio::Date date, const PageStyle& style,
                            const words::Words& words, const canvas::Faces& faces) {
    Flow flow(words.say(Sentence::pass_title), style, words, faces);
    flow.head(facts, date, words.say(players.empty() ? Sentence::pass_none : Sentence::pass_how));
    const Millimetres name_width = share_of_name * flow.live().width;
    for (const Player& player : players) {
        const ReadingBlanks blanks{player.kind,
                                   note_style(facts, player),
                                   notes_for(player.kind, notes),
                                   {words.say(Sentence::pass_reads)},
                                   name_width};
        const Millimetres height = reading_blanks_height(flow.sheet(), blanks);
        const canvas::Point at = flow.place(height, row_gap);
        draw_player(flow.sheet(), player, at, name_width - 3_mm);
        draw_reading_blanks(flow.sheet(), blanks, at, flow.live().width);
    }
    return flow.finished(facts, date);
}

}  // namespace lowledger::pages
