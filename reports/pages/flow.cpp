#include "reports/pages/flow.h"

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

void draw_foot(const Sheet& sheet, const std::string& what, const std::string& number, const Box& live) {
    canvas::draw_text(sheet.page, sheet.faces, number, type::small, {live.right(), live.bottom()},
                      canvas::Align::right);
    const Millimetres room = live.width - sheet.faces.width(number, type::small) - section_gap;
    canvas::draw_text(sheet.page, sheet.faces, canvas::shortened(sheet.faces, what, type::small, room),
                      type::small, {live.left, live.bottom()});
}

}  // namespace

Flow::Flow(std::string title, const PageStyle& style, const words::Words& words, const canvas::Faces& faces)
    : style_(style),
      size_(layout_size(style)),
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
    const Millimetres rule = y_ + 1.5_mm;
    document_.pages.back().items.emplace_back(
        canvas::Line{{live_.left, rule}, {live_.right(), rule}, {0.35_mm}});
    block(how, type::body, 3.5_mm);
}

void Flow::begin_page() {
    document_.pages.push_back({size_, {}});
    const std::string title = canvas::shortened(faces_, document_.title, type::strong, live_.width);
    y_ = canvas::draw_block(document_.pages.back(), faces_, title, type::strong, {live_.left, live_.top},
                            live_.width) +
         section_gap;
}

canvas::Point Flow::place(Millimetres height, Millimetres gap) {
    if (y_ + gap + height > live_.bottom() - foot) {
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
