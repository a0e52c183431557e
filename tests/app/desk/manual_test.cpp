#include "app/desk/manual.h"

#include <algorithm>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <iterator>
#include <set>

#include "app/desk/action.h"
#include "app/desk/places.h"
#include "tests/app/desk/prepared_studio.h"

namespace lowledger::desk {
namespace {

using Look = ManualRun::Look;
using testing::HasSubstr;

TEST(Manual, APartIsWhatStandsUnderAHeading) {
    const auto parts = manual_parts(
        "# All\n\nFirst.\n\n## Two\n\n![a picture](x.png)\n\nSee **Go**, `-7`\nand:\n\n"
        "1. one\n2. two\n\n- dot\n");
    ASSERT_EQ(parts.size(), 2U);
    EXPECT_EQ(parts[0].title, "All");
    EXPECT_EQ(parts[1].title, "Two");
    EXPECT_EQ(parts[1].runs, (std::vector<ManualRun>{{Look::text, "See "},
                                                     {Look::strong, "Go"},
                                                     {Look::text, ", "},
                                                     {Look::code, "-7"},
                                                     {Look::text, " and:\n\n1. one\n2. two\n\n• dot\n\n"}}));
}

TEST(Manual, NamesNoPictureAndHoldsEveryKey) {
    std::string keys;
    for (const auto& run : manual().back().runs)
        keys += run.text;
    for (const auto& action : actions()) {
        if (action.key.empty()) continue;
        EXPECT_THAT(keys, HasSubstr(std::string(action.key) + "  ")) << action.id;
    }
    for (const auto& part : manual()) {
        EXPECT_FALSE(part.runs.empty()) << part.title;
        for (const auto& run : part.runs)
            EXPECT_EQ(run.text.find(".png"), std::string::npos);
    }
}

TEST(Manual, TheDocumentNamesEveryKeyToo) {
    std::ifstream file(LOWLEDGER_SOURCE "/docs/teacher.md");
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    for (const auto& action : actions()) {
        if (action.key.empty()) continue;
        EXPECT_THAT(text, HasSubstr(std::string(action.key))) << action.id;
    }
}

TEST(Manual, WhereverOneIsThereIsAPartForIt) {
    std::set<std::string> titles;
    for (const auto& part : manual())
        titles.insert(part.title);
    PreparedStudio studio;
    studio.turn_to_ada();
    for (const auto section : {Section::last_time, Section::sheet, Section::settings, Section::history}) {
        studio.desk->go({.place = Place::students, .student = studio.ada, .section = section});
        EXPECT_TRUE(titles.contains(std::string(manual_title_for(*studio.desk))))
            << static_cast<int>(section);
    }
    studio.desk->go({.place = Place::today});
    EXPECT_TRUE(titles.contains(std::string(manual_title_for(*studio.desk))));
    for (const auto& entry : entry_of(Place::horns).sections) {
        studio.desk->go({.place = Place::horns, .section = entry.section});
        EXPECT_TRUE(titles.contains(std::string(manual_title_for(*studio.desk))));
    }
    EXPECT_EQ(manual_title_for(*studio.desk), "Loans and upkeep");
    studio.desk->go({.place = Place::horns, .section = Section::chart});
    action("help.manual").run(*studio.desk);
    EXPECT_THAT(studio.front.said, HasSubstr("Horns"));
}

}  // namespace
}  // namespace lowledger::desk
