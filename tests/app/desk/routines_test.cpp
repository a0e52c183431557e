#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>

#include "app/desk/action.h"
#include "app/desk/places.h"
#include "app/desk/practice.h"
#include "app/desk/routine_lists.h"
#include "model/units/refusal.h"
#include "tests/app/desk/prepared_studio.h"

namespace lowledger::desk {
namespace {

using studio::Assignment;
using studio::Date;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

/// Ada's page; she has the first routine of the library from 20 to 27 November 2026.
class Routines : public testing::Test {
  protected:
    Routines() { studio.turn_to_ada(); }

    void run(const char* id, const std::map<std::string, std::string>& slip = {}) {
        studio.front.slip = slip;
        action(id).run(*studio.desk);
    }
    [[nodiscard]] std::vector<Assignment> given() const {
        return studio.desk->file().assignments(studio.ada);
    }
    [[nodiscard]] std::vector<studio::PracticeEntry> practice() const {
        return studio.desk->file().practice(studio.ada, Date(2026, 1, 1), Date(2026, 12, 31));
    }
    [[nodiscard]] std::string first_given() const { return std::to_string(given().back().id.number); }

    PreparedStudio studio;
};

TEST_F(Routines, ANewStudioBeginsWithTheLibraryAndNothingToUndo) {
    EXPECT_GT(studio.desk->file().routines().size(), 12U);
    PreparedStudio other;
    other.desk->create({other.folder / "another.lowledger", {}});
    EXPECT_FALSE(other.desk->file().undo_name());
    EXPECT_THAT(missing_routines(other.desk->file()), IsEmpty());
}

TEST_F(Routines, OneIsGivenToAGroupAndItsMembersHaveIt) {
    studio::GroupId group;
    studio.desk->file().edit("group", [&](store::Edit& edit) {
        group = edit.add(studio::Group{
            .id = {}, .name = "Trio", .members = {{studio.ada, Date(2026, 9, 1), std::nullopt}}});
    });
    run("routine.give", {{"to", "g" + std::to_string(group.number)}, {"days", "1\n3"}, {"until", ""}});
    ASSERT_THAT(given(), SizeIs(2));
    EXPECT_EQ(given().front().group, group);
    EXPECT_EQ(given().front().days, (studio::Weekdays{1, 3}));
    EXPECT_FALSE(given().front().until);
    EXPECT_THAT(given_listing(*studio.desk).rows.front().cells[0].text, HasSubstr("(Trio)"));
    EXPECT_THAT(who_has(studio.desk->file(), given().front().routine, test_day), SizeIs(1));
}

TEST_F(Routines, DaysOrAnEndThatCannotBeAreAskedAgain) {
    const auto before = studio.dump();
    run("routine.give", {{"days", ""}});
    run("routine.give", {{"until", "2026-11-25"}});
    EXPECT_EQ(studio.dump(), before);
    EXPECT_THAT(studio.front.said, HasSubstr("Choose one day of the week at least."));
    EXPECT_THAT(studio.front.said, HasSubstr("The end must come after the beginning."));
}

TEST_F(Routines, RenewingGoesOnFromTodayForAsLongAsBefore) {
    run("routine.renew");
    ASSERT_THAT(given(), SizeIs(2));
    EXPECT_EQ(given().front().from, test_day);
    EXPECT_EQ(given().front().until, Date(2026, 12, 2));
    EXPECT_EQ(given().front().follows, given().back().id);
    EXPECT_EQ(given().back().end, Assignment::End::renewed);
    EXPECT_EQ(given().back().until, test_day);
    EXPECT_EQ(given_selected(*studio.desk)->id, given().front().id);
    EXPECT_THROW(run("routine.renew"), units::Refusal);
    ASSERT_THAT(given(), SizeIs(2));
}

TEST_F(Routines, WhatIsChangedOrStoppedKeepsItsPast) {
    run("routine.change_given", {{"amount", "twice"}, {"days", "2\n4"}});
    ASSERT_THAT(given(), SizeIs(2));
    EXPECT_EQ(given().front().amount, "twice");
    EXPECT_EQ(given().front().from, test_day);
    EXPECT_EQ(given().back().end, Assignment::End::changed);
    EXPECT_EQ(given().back().from, Date(2026, 11, 20));
    studio.desk->choose(Table::given, given().front().id.number);
    run("routine.stop");
    EXPECT_EQ(given().front().end, Assignment::End::stopped);
    EXPECT_EQ(given().front().until, test_day);
    EXPECT_THAT(given_listing(*studio.desk).rows, IsEmpty());
}

TEST_F(Routines, AWeekIsTickedAsOnPaper) {
    const std::string boxes = "given " + first_given();
    run("practice.week", {{boxes, "2026-11-23\n2026-11-25"}});
    ASSERT_THAT(practice(), SizeIs(2));
    EXPECT_EQ(practice().front().on, Date(2026, 11, 23));
    EXPECT_FALSE(practice().front().length);
    // Tuesday is ticked, Monday no longer; Wednesday stays the same entry.
    const auto wednesday = practice().back().id;
    run("practice.week", {{boxes, "2026-11-24\n2026-11-25"}});
    ASSERT_THAT(practice(), SizeIs(2));
    EXPECT_EQ(practice().front().on, Date(2026, 11, 24));
    EXPECT_EQ(practice().back().id, wednesday);
    EXPECT_EQ(practice_listing(*studio.desk).rows.front().cells[1].text, "2 of 3 days");
    EXPECT_THAT(given_listing(*studio.desk).rows.front().cells[4].text, HasSubstr("2 of"));
}

TEST_F(Routines, TheWeekBeforeIsTickedWhereItsRowIsChosen) {
    studio.desk->choose(Table::practice, 1);
    // Given on Friday the 20th: the days before have no box.
    run("practice.week", {{"given " + first_given(), "2026-11-20\n2026-11-22"}});
    ASSERT_THAT(practice(), SizeIs(2));
    EXPECT_EQ(practice_listing(*studio.desk).rows.at(1).cells[1].text, "2 of 3 days");
    studio.desk->choose(Table::practice, 5);
    EXPECT_THROW(run("practice.week"), units::Refusal);
}

TEST_F(Routines, WhatIsEnteredAgainTakesTheOldOnesPlaceAndMinutesAreKept) {
    run("practice.enter", {{"minutes", "15"}, {"on", "2026-11-24"}});
    run("practice.enter", {{"minutes", "20"}, {"on", "2026-11-24"}, {"remarks", "with a drone"}});
    ASSERT_THAT(practice(), SizeIs(1));
    EXPECT_EQ(practice().front().length, std::chrono::minutes(20));
    run("practice.enter", {{"given", "0"}, {"minutes", "10"}, {"remarks", "scales"}});
    ASSERT_THAT(practice(), SizeIs(2));
    EXPECT_EQ(practice_listing(*studio.desk).rows.front().cells[2].text, "30");
    // What was ticked anew keeps its minutes; what is no routine goes where its tick goes.
    const auto other = practice().back().id;
    run("practice.week",
        {{"given " + first_given(), "2026-11-24"}, {"entry " + std::to_string(other.number), ""}});
    ASSERT_THAT(practice(), SizeIs(1));
    EXPECT_EQ(practice().front().length, std::chrono::minutes(20));
    run("practice.enter", {{"minutes", "a lot"}});
    EXPECT_THAT(studio.front.said, HasSubstr("Write whole minutes from 1 to 1440"));
}

TEST_F(Routines, MusicThatCannotBeReadIsAskedAgain) {
    const auto before = studio.dump();
    run("routine.add", {{"title", "Mine"}, {"music", "Bb1/2 X9"}});
    EXPECT_EQ(studio.dump(), before);
    EXPECT_THAT(studio.front.said, HasSubstr("X9"));
    run("routine.add",
        {{"title", "Mine"}, {"music", "Bb1/2 C2"}, {"steps", "One\n\nTwo"}, {"levels", "0\n2"}});
    EXPECT_EQ(studio.desk->view().place, Place::routines);
    const auto mine = studio.desk->file().routine(*studio.desk->view().routine);
    EXPECT_EQ(mine->steps, (std::vector<std::string>{"One", "Two"}));
    EXPECT_THAT(mine->levels, SizeIs(2));
}

TEST_F(Routines, OneThatWasGivenIsArchivedAndNotRemoved) {
    studio.desk->go({.place = Place::routines, .routine = given().front().routine});
    EXPECT_THROW(run("routine.remove"), units::Refusal);
    run("routine.archive");
    const auto listing = entry_of(Place::routines).list->listing(*studio.desk, "");
    EXPECT_TRUE(listing.rows.back().faint);
    EXPECT_EQ(listing.rows.back().cells.back().text, "1");
}

TEST_F(Routines, APieceIsWorkedOnUntilItIsFinished) {
    run("piece.add", {{"title", "Second march"}, {"composer", "N. N."}, {"part", "2nd"}});
    EXPECT_EQ(pieces_listing(*studio.desk).rows.front().cells[0].text, "Second march · N. N.");
    EXPECT_TRUE(action("piece.finish").may_run(*studio.desk));
    run("piece.finish");
    EXPECT_FALSE(action("piece.finish").may_run(*studio.desk));
    const auto pieces = studio.desk->file().pieces(studio.ada);
    ASSERT_THAT(pieces, SizeIs(2));
    EXPECT_EQ(pieces.front().until, test_day + 1);
}

}  // namespace
}  // namespace lowledger::desk
