#include <algorithm>
#include <string>
#include <vector>

#include "reports/canvas/text_block.h"
#include "reports/pages/handout_parts.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using canvas::Box;
using canvas::Point;
using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr double share_of_name = 0.62;
constexpr auto column_gap = 8_mm;

/// At most `most` lines; what is left over ends the last one in an ellipsis.
std::vector<std::string> few_lines(const Sheet& sheet, const std::string& text,
                                   const canvas::TextStyle& style, Millimetres width, std::size_t most) {
    auto lines = canvas::wrapped(sheet.faces, text, style, width);
    if (lines.size() <= most) return lines;
    for (std::size_t i = most; i < lines.size(); ++i)
        lines[most - 1] += " " + lines[i];
    lines.resize(most);
    lines.back() = canvas::shortened(sheet.faces, lines.back(), style, width);
    return lines;
}

/// In the title's size where it fits on one line, else smaller on two.
Millimetres draw_name(const Sheet& sheet, const std::string& name, Point top_left, Millimetres width) {
    const bool fits = sheet.faces.width(name, type::title) <= width;
    const auto& style = fits ? type::title : type::heading;
    return canvas::draw_lines(sheet.page, sheet.faces, few_lines(sheet, name, style, width, 2), style,
                              top_left, width);
}

std::string horn_line(const HandoutInputs& inputs, const words::Words& words) {
    std::string kind = words::kind_name(inputs.kind);
    if (inputs.horn.mark.empty()) return kind;
    return words.say(Sentence::handout_horn, {{"kind", kind}, {"mark", inputs.horn.mark}});
}

std::vector<const std::string*> set_in(const std::vector<std::string>& texts) {
    std::vector<const std::string*> some;
    for (const auto& text : texts) {
        if (!text.empty()) some.push_back(&text);
    }
    return some;
}

std::vector<std::string> cautions_of(const Sheet& sheet, const horns::HornKind& kind) {
    const words::Words& words = sheet.words;
    std::vector<std::string> all = {words.say(Sentence::caution_stuck_slide),
                                    words.say(Sentence::caution_hold_valve),
                                    words.say(Sentence::caution_grease)};
    for (const std::string& caution : kind.cautions)
        all.push_back(words::caution_of_kind(words, caution));
    all.push_back(words.say(Sentence::caution_hearing));
    all.push_back(words.say(Sentence::caution_mouthpiece));
    return all;
}

constexpr auto caution_gap = 0.6_mm;
constexpr auto rule_gap = 2_mm;

struct CautionColumns {
    std::vector<std::string> left;
    std::vector<std::string> right;
    Millimetres width;
    /// Of the taller one.
    Millimetres height;
};

Millimetres column_height(const Sheet& sheet, const std::vector<std::string>& column, Millimetres width) {
    Millimetres height;
    for (const std::string& caution : column)
        height += canvas::block_height(sheet.faces, caution, type::small, width) + caution_gap;
    return height;
}

/// Cut where the taller column is the least tall.
CautionColumns in_columns(const Sheet& sheet, const horns::HornKind& kind, Millimetres width) {
    const auto all = cautions_of(sheet, kind);
    CautionColumns best;
    for (auto cut = all.begin(); cut != all.end(); ++cut) {
        CautionColumns columns{{all.begin(), cut}, {cut, all.end()}, 0.5 * (width - column_gap), {}};
        columns.height = std::max(column_height(sheet, columns.left, columns.width),
                                  column_height(sheet, columns.right, columns.width));
        if (cut == all.begin() || columns.height < best.height) best = columns;
    }
    return best;
}

}  // namespace

Millimetres draw_head(const Sheet& sheet, const HandoutInputs& inputs, const Box& place) {
    const Millimetres name_width = share_of_name * place.width;
    Millimetres left_y = draw_name(sheet, inputs.student.name, {place.left, place.top}, name_width);
    left_y = canvas::draw_lines(sheet.page, sheet.faces,
                                few_lines(sheet, horn_line(inputs, sheet.words), type::lead, name_width, 2),
                                type::lead, {place.left, left_y}, name_width);

    const Millimetres facts_left = place.left + name_width + column_gap;
    const Millimetres facts_width = place.right() - facts_left;
    Millimetres right_y = place.top + 1.2_mm;
    const std::vector<std::string> facts = {words::date_text(sheet.words, inputs.date), inputs.facts.teacher,
                                            inputs.facts.school};
    for (const std::string* fact : set_in(facts)) {
        const auto& style = fact == &facts.front() ? type::strong : type::body;
        right_y = canvas::draw_lines(sheet.page, sheet.faces, few_lines(sheet, *fact, style, facts_width, 2),
                                     style, {facts_left, right_y}, facts_width, canvas::Align::right);
    }
    const Millimetres rule = std::max(left_y, right_y) + 1.5_mm;
    sheet.page.items.emplace_back(canvas::Line{{place.left, rule}, {place.right(), rule}, {0.35_mm}});
    return rule;
}

Millimetres cautions_height(const Sheet& sheet, const horns::HornKind& kind, Millimetres width) {
    return rule_gap + in_columns(sheet, kind, width).height - caution_gap;
}

void draw_cautions(const Sheet& sheet, const horns::HornKind& kind, Point top_left, Millimetres width) {
    const auto columns = in_columns(sheet, kind, width);
    sheet.page.items.emplace_back(
        canvas::Line{top_left, {top_left.x + width, top_left.y}, {0.15_mm, canvas::Tone::faint}});
    Millimetres x = top_left.x;
    for (const auto& column : {columns.left, columns.right}) {
        Millimetres y = top_left.y + rule_gap;
        for (const std::string& caution : column) {
            y = canvas::draw_block(sheet.page, sheet.faces, caution, type::small, {x, y}, columns.width) +
                caution_gap;
        }
        x += columns.width + column_gap;
    }
}

}  // namespace lowledger::pages
