#include <algorithm>
#include <gtest/gtest.h>

#include "reports/canvas/paper.h"
#include "reports/pages/handout.h"
#include "tests/reports/pages/sample_handouts.h"

namespace lowledger::pages {
namespace {

using canvas::Box;
using units::Millimetres;
using namespace units::literals;

/// Ink that letters can have: a little below an accented capital, and most of a descender.
Box ink_of(const canvas::Text& text) {
    const Millimetres size = in_millimetres(text.style.size);
    return {text.baseline.x, text.baseline.y - 0.75 * size, text.width, 0.93 * size};
}

bool overlap(const Box& a, const Box& b) {
    constexpr auto touch = 0.05_mm;
    return a.left + touch < b.right() && b.left + touch < a.right() && a.top + touch < b.bottom() &&
           b.top + touch < a.bottom();
}

std::vector<canvas::Text> texts_of(const canvas::Page& page) {
    std::vector<canvas::Text> texts;
    for (const auto& item : page.items) {
        if (const auto* const text = std::get_if<canvas::Text>(&item)) texts.push_back(*text);
    }
    return texts;
}

std::vector<Box> inks_of(const canvas::Page& page) {
    std::vector<Box> inks;
    for (const auto& item : page.items) {
        if (const auto* const line = std::get_if<canvas::Line>(&item)) {
            const auto [left, right] = std::minmax(line->from.x, line->to.x);
            const auto [top, bottom] = std::minmax(line->from.y, line->to.y);
            inks.push_back({left, top, right - left, bottom - top});
        } else if (const auto* const shape = std::get_if<canvas::Shape>(&item)) {
            inks.push_back(canvas::extent(shape->steps));
        } else if (const auto* const outline = std::get_if<canvas::Outline>(&item)) {
            inks.push_back(canvas::extent(outline->steps));
        } else if (const auto* const text = std::get_if<canvas::Text>(&item)) {
            inks.push_back(ink_of(*text));
        }
    }
    return inks;
}

template <typename Check>
void for_each_page(Check check) {
    const canvas::Faces faces;
    const words::Words words;
    for (auto [name, inputs] : awkward_handouts()) {
        for (const auto paper : {canvas::Paper::a4, canvas::Paper::letter}) {
            SCOPED_TRACE(name + (paper == canvas::Paper::a4 ? " on A4" : " on Letter"));
            inputs.paper = paper;
            const auto document = handout(inputs, words, faces);
            ASSERT_EQ(document.pages.size(), 1U);
            check(document.pages.front());
        }
    }
}

TEST(HandoutLayout, NothingPassesTheMargins) {
    for_each_page([](const canvas::Page& page) {
        const Box live = canvas::live_area(page.size);
        constexpr auto slack = 0.3_mm;
        for (const Box& ink : inks_of(page)) {
            EXPECT_GE(ink.left + slack, live.left);
            EXPECT_GE(ink.top + slack, live.top);
            EXPECT_LE(ink.right() - slack, live.right());
            EXPECT_LE(ink.bottom() - slack, live.bottom());
        }
    });
}

TEST(HandoutLayout, NoTextOverlapsAnother) {
    for_each_page([](const canvas::Page& page) {
        const auto texts = texts_of(page);
        for (std::size_t i = 0; i < texts.size(); ++i) {
            for (std::size_t j = i + 1; j < texts.size(); ++j) {
                EXPECT_FALSE(overlap(ink_of(texts[i]), ink_of(texts[j])))
                    << texts[i].text << "  over  " << texts[j].text;
            }
        }
    });
}

TEST(HandoutLayout, SentencesAreSetInFourSizes) {
    for_each_page([](const canvas::Page& page) {
        for (const auto& text : texts_of(page)) {
            const double size = text.style.size.value();
            const bool sentence = std::count(text.text.begin(), text.text.end(), ' ') > 3;
            EXPECT_TRUE(!sentence || size == 18 || size == 11 || size == 9 || size == 7) << text.text;
        }
    });
}

TEST(HandoutLayout, StripsAreTrueSize) {
    const canvas::Faces faces;
    const auto document = handout(usual_handout(), words::Words(), faces);
    const auto& items = document.pages.front().items;
    const auto is_check = [](const canvas::Item& item) {
        const auto* const line = std::get_if<canvas::Line>(&item);
        return line != nullptr && std::abs((line->to.x - line->from.x).value() - 50.0) < 1e-9;
    };
    EXPECT_EQ(std::count_if(items.begin(), items.end(), is_check), 1);
}

}  // namespace
}  // namespace lowledger::pages
