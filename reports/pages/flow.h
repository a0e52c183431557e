#pragma once

#include <string>

#include "model/studio/date.h"
#include "model/studio/records.h"
#include "reports/canvas/table.h"
#include "reports/pages/page_style.h"
#include "reports/pages/type.h"

namespace lowledger::pages {

/// Puts one thing under the other, on a new page where the last has no room. Every page after the first
/// begins with the title; pages of more than one have title, date and number at the foot.
class Flow {
  public:
    enum class Turn { upright, across };
    Flow(std::string title, const PageStyle& style, const words::Words& words, const canvas::Faces& faces,
         Turn turn = Turn::upright);

    [[nodiscard]] Sheet sheet() { return {document_.pages.back(), faces_, words_}; }
    [[nodiscard]] const canvas::Box& live() const { return live_; }

    /// Title, whose pages they are, and how to use them, over a rule.
    void head(const studio::StudioFacts& facts, studio::Date date, const std::string& how);
    /// For a page that is one person's or one horn's: whose it is, what it is, and at the right when, over
    /// the teacher and the school; over a rule.
    void head_of(const studio::StudioFacts& facts, const std::string& whose, const std::string& what,
                 const std::string& when);
    /// A place for something so high, `gap` under the last unless it begins a page.
    canvas::Point place(units::Millimetres height, units::Millimetres gap);
    void block(const std::string& text, const canvas::TextStyle& style, units::Millimetres gap);
    /// A heading that stays with at least so much of what follows.
    void heading(const std::string& text, units::Millimetres gap, units::Millimetres follows);
    /// Text of any length: it goes on over pages, no line of a paragraph alone.
    void text(const std::string& text, const canvas::TextStyle& style, units::Millimetres gap,
              units::Millimetres indent = {});
    /// A table that goes on over pages and repeats its head.
    void table(const canvas::Table& table, units::Millimetres gap);
    /// Empty lines to write on by hand.
    void blank_lines(int count, units::Millimetres gap);

    /// The finished document; the flow ends with it.
    [[nodiscard]] canvas::Document finished(const studio::StudioFacts& facts, studio::Date date);

  private:
    void begin_page();
    void rule(units::Millimetres y);
    [[nodiscard]] units::Millimetres bottom() const;

    canvas::Document document_;
    PageStyle style_;
    canvas::Size size_;
    canvas::Box live_;
    const words::Words& words_;
    const canvas::Faces& faces_;
    units::Millimetres y_;
};

}  // namespace lowledger::pages
