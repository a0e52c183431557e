#include "app/desk/year_end.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "app/desk/action.h"
#include "app/desk/lending.h"
#include "tests/app/desk/prepared_studio.h"

namespace lowledger::desk {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

class YearsEndRun : public testing::Test {
  protected:
    YearsEndRun() {
        studio.plan_a_term();
        studio.lend_and_note();
        studio.desk->go({.place = Place::terms, .section = Section::years_end, .term = studio.term});
    }

    void run(std::string_view id, std::map<std::string, std::string> slip = {}) {
        studio.front.slip = std::move(slip);
        ASSERT_TRUE(action(id).may_run(*studio.desk)) << id;
        action(id).run(*studio.desk);
    }

    /// What is to be done, a row each.
    [[nodiscard]] std::vector<std::string> to_do() const {
        std::vector<std::string> texts;
        for (const auto& row : years_end_listing(*studio.desk).rows)
            texts.push_back(row.cells[0].text + " " + row.cells[1].text + row.cells[2].text);
        return texts;
    }

    void choose(const std::string& what) {
        for (const auto& row : years_end_listing(*studio.desk).rows)
            if (row.cells[0].text == what) return studio.desk->choose(Table::years_end, row.id);
        FAIL() << what;
    }

    PreparedStudio studio;
};

TEST(NextYear, RaisesTheFirstNumber) {
    EXPECT_EQ(next_year("Year 7"), "Year 8");
    EXPECT_EQ(next_year("9b"), "10b");
    EXPECT_EQ(next_year("adult"), "adult");
    EXPECT_EQ(next_year(""), "");
    EXPECT_EQ(next_year("99999999999999999999"), "99999999999999999999");
}

TEST_F(YearsEndRun, ListsWhatIsOutUncheckedToRepairAndWhoMovesUp) {
    EXPECT_THAT(to_do(), ElementsAre("Bring back T-1Ada Example", "Check T-2", "Repair T-1",
                                     "Move up Ada Example", "Move up Ben Beispiel"));
    EXPECT_EQ(years_end_summary(*studio.desk),
              "Horns out: 1. To check: 1. To repair: 1. Students to move up or archive: 2.");
}

TEST_F(YearsEndRun, AHornComesBackIsCheckedAndRepaired) {
    run("year.see_to", {{"condition_in", "dent in the bow"}, {"to_repair", "bow"}});
    EXPECT_EQ(studio.desk->file().undo_name(), "T-1 comes back from Ada Example");
    EXPECT_THAT(studio.desk->file().loans_out(), IsEmpty());
    EXPECT_THAT(to_do(), ElementsAre("Check T-1", "Check T-2", "Repair T-1", "Repair T-1",
                                     "Move up Ada Example", "Move up Ben Beispiel"));
    choose("Check");
    run("year.see_to", {{"condition", "good but for the bow"}});
    EXPECT_EQ(studio.desk->file().horn(studio.tuba)->condition, "good but for the bow");
    choose("Repair");
    run("year.see_to", {{"by", "the technician"}, {"cost", "40 EUR"}});
    EXPECT_THAT(to_do(),
                ElementsAre("Check T-2", "Repair T-1", "Move up Ada Example", "Move up Ben Beispiel"));
    for (int step = 0; step < 3; ++step)
        action("edit.undo").run(*studio.desk);
    EXPECT_THAT(studio.desk->file().loans_out(), SizeIs(1));
}

TEST_F(YearsEndRun, ARepairIsNotDoneBeforeItWasNoted) {
    choose("Repair");
    const auto before = studio.dump();
    run("year.see_to", {{"done_on", "2026-09-01"}});
    EXPECT_EQ(studio.dump(), before);
    EXPECT_THAT(studio.front.said, HasSubstr("noted later than that"));
}

TEST_F(YearsEndRun, AllHornsComeBackInOneStep) {
    const auto before = studio.dump();
    run("year.all_back", {{"until", "2026-09-06"}});
    EXPECT_EQ(studio.dump(), before);
    EXPECT_THAT(studio.front.said, HasSubstr("was lent after that day"));
    run("year.all_back");
    EXPECT_THAT(studio.desk->file().loans_out(), IsEmpty());
    EXPECT_EQ(studio.desk->file().loans(studio.tuba).front().condition_in, "two small dents");
    EXPECT_FALSE(action("year.all_back").may_run(*studio.desk));
    action("edit.undo").run(*studio.desk);
    EXPECT_EQ(studio.dump(), before);
}

TEST_F(YearsEndRun, AStudentMovesUpOrLeaves) {
    choose("Move up");
    run("year.see_to", {{"year", "Year 8"}, {"level", "advanced"}});
    EXPECT_EQ(studio.desk->file().student(studio.ada)->year, "Year 8");
    EXPECT_EQ(studio.desk->file().student(studio.ada)->level, studio::Level::advanced);
    choose("Move up");
    run("year.see_to", {{"leaves", "yes"}});
    EXPECT_TRUE(studio.desk->file().student(studio.ada)->archived);
    EXPECT_EQ(studio.desk->file().student(studio.ada)->year, "Year 8");
    EXPECT_EQ(studio.desk->file().undo_name(), "Ada Example leaves");
}

TEST_F(YearsEndRun, AllMoveUpButThoseWhoLeave) {
    studio.desk->file().edit("years", [&](store::Edit& edit) {
        for (auto student : studio.desk->file().students()) {
            student.year = "Year 7";
            edit.update(student);
        }
    });
    const auto before = studio.dump();
    run("year.all_up", {{"leaves", key_of(studio.ben)}});
    EXPECT_EQ(studio.desk->file().student(studio.ada)->year, "Year 8");
    EXPECT_EQ(studio.desk->file().student(studio.ben)->year, "Year 7");
    EXPECT_TRUE(studio.desk->file().student(studio.ben)->archived);
    action("edit.undo").run(*studio.desk);
    EXPECT_EQ(studio.dump(), before);
}

}  // namespace
}  // namespace lowledger::desk
