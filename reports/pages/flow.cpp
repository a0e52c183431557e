#include "reports/pages/flow.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "reports/canvas/text_block.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using canvas::Box;
using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr auto section_gap = 4_mm;
/// Kept free for the page's number.
constexpr auto foot = 6_mm;
constexpr double share_of_name = 0.62;
/// From one line to write on to the next.
constexpr auto line_to_write = 8_mm;

canvas::Size turned(canvas::Size size, Flow::Turn turn) {
    return turn == Flow::Turn::upright ? size : canvas::Size{size.height, size.width};
}

void draw_foot(const Sheet& sheet, const std::string& what, const std::string& number, const Box& live) {
    canvas::draw_text(sheet.page, sheet.faces, number, type::small, {live.right(), live.bottom()},
                      canvas::Align::right);
    const Millimetres room = live.width - sheet.faces.width(number, type::small) - section_gap;
    canvas::draw_text(sheet.page, sheet.faces, canvas::shortened(sheet.faces, what, type::small, room),
                      type::small, {live.left, live.bottom()});
}

}  // namespace

Flow::Flow(std::string title, const PageStyle& style, const words::Words& words, const canvas::Faces& faces,
           Turn turn)
    : style_(style),
      size_(turned(layout_size(style), turn)),
      live_(canvas::live_area(size_)),
      words_(words),
      faces_(faces),
      y_(live_.top) {
    document_.title = std::move(title);
    document_.pages.push_back({size_, {}});
}

void Flow::head(const studio::StudioFacts& facts, studio::Date date, const std::string& how) {
    block(document_.title, type::title, 0_mm);
    const std::string day = words::date_text(words_, date);
    const std::string of = facts.school.empty() ? facts.name : facts.school;
    block(of.empty() ? day : words_.say(Sentence::table_of, {{"studio", of}, {"date", day}}), type::lead,
          0_mm);
    rule(y_ + 1.5_mm);
    block(how, type::body, 3.5_mm);
}

void Flow::head_of(const studio::StudioFacts& facts, const std::string& whose, const std::string& what,
                   const std::string& when) {
    canvas::Page& page = document_.pages.back();
    const Millimetres width = share_of_name * live_.width;
    Millimetres left = canvas::draw_block(page, faces_, whose, type::title, {live_.left, y_}, width);
    left = canvas::draw_block(page, faces_, what, type::lead, {live_.left, left}, width);
    const Millimetres x = live_.left + width + section_gap;
    Millimetres right = y_ + 1.2_mm;
    for (const auto& [text, style] :
         {std::pair(when, type::strong), {facts.teacher, type::body}, {facts.school, type::body}})
        right = canvas::draw_block(page, faces_, text, style, {x, right}, live_.right() - x,
                                   canvas::Align::right);
    y_ = std::max(left, right);
    rule(y_ + 1.5_mm);
    y_ += 2.5_mm;
}

void Flow::rule(Millimetres y) {
    document_.pages.back().items.emplace_back(canvas::Line{{live_.left, y}, {live_.right(), y}, {0.35_mm}});
}

Millimetres Flow::bottom() const {
    return live_.bottom() - foot;
}

void Flow::begin_page() {
    document_.pages.push_back({size_, {}});
    const std::string title = canvas::shortened(faces_, document_.title, type::strong, live_.width);
    y_ = canvas::draw_block(document_.pages.back(), faces_, title, type::strong, {live_.left, live_.top},
                            live_.width) +
         section_gap;
}

canvas::Point Flow::place(Millimetres height, Millimetres gap) {
    if (y_ + gap + height > bottom()) {
        begin_page();
    } else {
        y_ += gap;
    }
    const canvas::Point at{live_.left, y_};
    y_ += height;
    return at;
}

void Flow::block(const std::string& text, const canvas::TextStyle& style, Millimetres gap) {
    const canvas::Point at = place(canvas::block_height(faces_, text, style, live_.width), gap);
    canvas::draw_block(document_.pages.back(), faces_, text, style, at, live_.width);
}

void Flow::heading(const std::string& text, Millimetres gap, Millimetres follows) {
    const Millimetres height = canvas::block_height(faces_, text, type::heading, live_.width);
    if (y_ + gap + height + follows > bottom() && y_ > live_.top) begin_page();
    block(text, type::heading, gap);
}

void Flow::text(const std::string& text, const canvas::TextStyle& style, Millimetres gap,
                Millimetres indent) {
    const auto lines = canvas::wrapped(faces_, text, style, live_.width - indent);
    const Millimetres height = canvas::leading(style);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        // The first two and the last two stay together.
        const bool with_next = (i == 0 && lines.size() > 1) || (i > 0 && i + 2 == lines.size());
        if (y_ + gap + (with_next ? 2.0 : 1.0) * height > bottom()) begin_page();
        const canvas::Point at = place(height, i == 0 ? gap : 0_mm);
        canvas::draw_lines(document_.pages.back(), faces_, {lines[i]}, style, {at.x + indent, at.y},
                           live_.width - indent);
    }
}

void Flow::table(const canvas::Table& table, Millimetres gap) {
    const auto measured = canvas::measured(faces_, table, live_.width);
    std::optional<canvas::TablePlace> from = canvas::TablePlace{};
    if (y_ + gap + canvas::least_height(measured, *from) > bottom())
        begin_page();
    else
        y_ += gap;
    while (true) {
        const auto part =
            canvas::draw_table(document_.pages.back(), faces_, measured, {live_.left, y_}, bottom(), *from);
        y_ = part.below;
        from = part.rest;
        if (!from) return;
        begin_page();
    }
}

void Flow::blank_lines(int count, Millimetres gap) {
    for (int i = 0; i < count; ++i) {
        const canvas::Point at = place(line_to_write, i == 0 ? gap : 0_mm);
        document_.pages.back().items.emplace_back(canvas::Line{{at.x, at.y + line_to_write},
                                                               {live_.right(), at.y + line_to_write},
                                                               {0.2_mm, canvas::Tone::faint}});
    }
}

canvas::Document Flow::finished(const studio::StudioFacts& facts, studio::Date date) {
    document_.author = facts.teacher;
    document_.bookmarks = {{document_.title, 0}};
    const std::size_t count = document_.pages.size();
    const std::string what = words_.say(
        Sentence::foot_date, {{"title", document_.title}, {"date", words::date_text(words_, date)}});
    for (std::size_t i = 0; count > 1 && i < count; ++i) {
        const std::string number = words_.say(
            Sentence::page_number, {{"number", std::to_string(i + 1)}, {"of", std::to_string(count)}});
        draw_foot({document_.pages[i], faces_, words_}, what, number, live_);
    }
    return printed(std::move(document_), style_);
}

}  // namespace lowledger::pages
