#include "reports/pages/settings_table.h"

#include <algorithm>
#include <gtest/gtest.h>

#include "tests/reports/pages/sample_handouts.h"
#include "tests/reports/recorded.h"

namespace lowledger::pages {
namespace {

canvas::Document table_of(const std::vector<HandoutInputs>& rows) {
    const canvas::Faces faces;
    const auto usual = usual_handout();
    return settings_table(rows, usual.facts, usual.date, PageStyle{}, words::Words(), faces);
}

std::vector<HandoutInputs> many_rows() {
    std::vector<HandoutInputs> rows;
    for (int i = 0; i < 12; ++i) {
        for (const auto& sample : awkward_handouts())
            rows.push_back(sample.inputs);
    }
    return rows;
}

bool says(const canvas::Page& page, const std::string& words) {
    const auto texts = canvas::texts(page);
    return std::any_of(texts.begin(), texts.end(),
                       [&](const canvas::Text& text) { return text.text == words; });
}

TEST(SettingsTable, HasTheSlidesOfEveryStudent) {
    const auto document = table_of({usual_handout()});
    ASSERT_EQ(document.pages.size(), 1U);
    for (const auto* const words : {"Ida Holm", "T-4", "20 to 35", "10", "40 to 20"})
        EXPECT_TRUE(says(document.pages.front(), words)) << words;
}

TEST(SettingsTable, GoesOnOverPagesWithItsHead) {
    const auto document = table_of(many_rows());
    ASSERT_GT(document.pages.size(), 1U);
    for (const auto& page : document.pages)
        EXPECT_TRUE(says(page, "Student"));
    EXPECT_TRUE(says(document.pages.front(), "1 of " + std::to_string(document.pages.size())));
}

TEST(SettingsTable, KeepsToTheMargins) {
    for (const auto& page : table_of(many_rows()).pages) {
        for (const auto& item : page.items)
            EXPECT_TRUE(canvas::within(canvas::ink_box(item), canvas::live_area(page.size)));
    }
}

TEST(SettingsTable, WithoutARowSaysWhatToDo) {
    const auto document = table_of({});
    ASSERT_EQ(document.pages.size(), 1U);
    EXPECT_TRUE(says(document.pages.front(), words::Words().say(words::Sentence::table_none)));
}

}  // namespace
}  // namespace lowledger::pages
