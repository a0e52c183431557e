#include <algorithm>
#include <gtest/gtest.h>
#include <set>

#include "reports/canvas/paper.h"
#include "reports/pages/handout.h"
#include "tests/reports/pages/sample_handouts.h"
#include "tests/reports/recorded.h"

namespace lowledger::pages {
namespace {

using canvas::Box;
using units::Millimetres;
using namespace units::literals;

/// Ink that letters can have: a little below an accented capital, and most of a descender.
Box letters_of(const canvas::Text& text) {
    const Millimetres size = in_millimetres(text.style.size);
    return {text.baseline.x, text.baseline.y - 0.75 * size, text.width, 0.93 * size};
}

template <typename Check>
void for_each_page(Check check) {
    const canvas::Faces faces;
    const words::Words words;
    auto samples = awkward_handouts();
    for (const auto& kind : horns::built_in_kinds())
        samples.push_back({kind.id, answered_handout(kind)});
    for (auto& [name, inputs] : samples) {
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
        constexpr auto stroke = 0.3_mm;
        const Box allowed{live.left - stroke, live.top - stroke, live.width + 2.0 * stroke,
                          live.height + 2.0 * stroke};
        for (const auto& item : page.items)
            EXPECT_TRUE(canvas::within(canvas::ink_box(item), allowed));
        for (const auto& text : canvas::texts(page))
            EXPECT_TRUE(canvas::within(letters_of(text), allowed)) << text.text;
    });
}

TEST(HandoutLayout, NoTextOverlapsAnother) {
    for_each_page([](const canvas::Page& page) {
        const auto texts = canvas::texts(page);
        for (std::size_t i = 0; i < texts.size(); ++i) {
            for (std::size_t j = i + 1; j < texts.size(); ++j) {
                EXPECT_FALSE(canvas::overlap(letters_of(texts[i]), letters_of(texts[j])))
                    << texts[i].text << "  over  " << texts[j].text;
            }
        }
    });
}

TEST(HandoutLayout, SentencesAreSetInFourSizes) {
    for_each_page([](const canvas::Page& page) {
        for (const auto& text : canvas::texts(page)) {
            const double size = text.style.size.value();
            const bool sentence = std::count(text.text.begin(), text.text.end(), ' ') > 3;
            EXPECT_TRUE(!sentence || size == 18 || size == 11 || size == 9 || size == 7) << text.text;
        }
    });
}

TEST(HandoutLayout, IsAsItWasLookedAt) {
    const canvas::Faces faces;
    const words::Words words;
    auto inputs = usual_handout();
    EXPECT_EQ(canvas::difference_from_golden(handout(inputs, words, faces).pages.front(), "handout-a4"), "");
    inputs.paper = canvas::Paper::letter;
    EXPECT_EQ(canvas::difference_from_golden(handout(inputs, words, faces).pages.front(), "handout-letter"),
              "");
    for (const auto& sample : awkward_handouts()) {
        const std::set<std::string> looked_at = {"nothing-measured", "treble-clef-euphonium",
                                                 "tenor-clef-trombone", "german-names"};
        if (looked_at.count(sample.name) == 0) continue;
        const auto document = handout(sample.inputs, words, faces);
        EXPECT_EQ(canvas::difference_from_golden(document.pages.front(), "handout-" + sample.name), "");
    }
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
