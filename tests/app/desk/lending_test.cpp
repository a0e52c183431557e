#include "app/desk/lending.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "app/desk/action.h"
#include "app/desk/tables.h"
#include "tests/app/desk/prepared_studio.h"

namespace lowledger::desk {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

class Lending : public testing::Test {
  protected:
    Lending() {
        studio.lend_and_note();
        studio.desk->go({.place = Place::horns, .horn = studio.tuba, .section = Section::loans});
    }

    void run(std::string_view id, std::map<std::string, std::string> slip = {}) {
        studio.front.slip = std::move(slip);
        ASSERT_TRUE(action(id).may_run(*studio.desk)) << id;
        action(id).run(*studio.desk);
    }

    [[nodiscard]] std::vector<studio::Loan> loans(studio::HornId horn) const {
        return studio.desk->file().loans(horn);
    }

    PreparedStudio studio;
};

std::vector<std::string> texts(const ListingRow& row) {
    std::vector<std::string> out;
    for (const auto& cell : row.cells)
        out.push_back(cell.text);
    return out;
}

TEST_F(Lending, TheTableSaysWhoHasItAndWhatIsOverdue) {
    const auto listing = entry_of(Table::loans).listing(*studio.desk);
    ASSERT_EQ(listing.rows.size(), 2U);
    EXPECT_THAT(texts(listing.rows[0]), ElementsAre("Ada Example", "7 September 2026", "20 November 2026",
                                                    "5 days overdue", "not yet", "two small dents"));
    EXPECT_EQ(listing.rows[1].cells[3].text, "10 July 2026");
    EXPECT_TRUE(listing.rows[1].faint);
}

TEST_F(Lending, EveryTableHasItsCellsAndActions) {
    for (const auto& table : tables()) {
        if (table.listing(*studio.desk).rows.empty()) studio.turn_to_ada();
        const auto listing = table.listing(*studio.desk);
        ASSERT_FALSE(listing.rows.empty());
        for (const auto& row : listing.rows)
            EXPECT_EQ(row.cells.size(), listing.columns.size());
        for (const auto id : table.offers)
            EXPECT_FALSE(action(id).text.empty());
        EXPECT_FALSE(action(table.opens).text.empty());
    }
}

TEST_F(Lending, AHornGoesHomeWithOneStudentAtATime) {
    EXPECT_FALSE(action("loan.lend").may_run(*studio.desk));
    studio.desk->choose(Table::loans, loans(studio.tuba).back().id.number);
    run("loan.change", {{"until", "2026-09-30"}});
    EXPECT_THAT(studio.front.said, HasSubstr("Ada Example has this horn at home"));
    EXPECT_EQ(loans(studio.tuba).back().until, studio::Date(2026, 7, 10));

    // Brought back in the morning, it goes out again the same day.
    run("loan.back", {{"condition_in", "dent in the bow"}, {"to_repair", "bow"}});
    run("loan.lend", {{"student", key_of(studio.ben)}});
    ASSERT_EQ(loans(studio.tuba).size(), 3U);
    EXPECT_EQ(loans(studio.tuba).front().student, studio.ben);
    EXPECT_EQ(loans(studio.tuba).front().from, test_day);
    EXPECT_EQ(loans(studio.tuba).front().condition_out, "dent in the bow");
}

TEST_F(Lending, WhatCameBackDentedStandsOnTheHornAndTheRepairList) {
    run("loan.back", {{"condition_in", "dent in the bow"}, {"to_repair", "bow"}, {"disinfected", "yes"}});
    EXPECT_EQ(studio.desk->horn()->condition, "dent in the bow");
    EXPECT_EQ(loans(studio.tuba).front().until, test_day);
    std::vector<std::string> to_do;
    bool disinfected = false;
    for (const auto& work : studio.desk->file().upkeep(studio.tuba)) {
        if (!work.done_on) to_do.push_back(work.what);
        disinfected = disinfected || work.disinfected;
    }
    EXPECT_THAT(to_do, testing::UnorderedElementsAre("water key leaks", "bow"));
    EXPECT_TRUE(disinfected);
}

TEST_F(Lending, AnEarlyReturnOrDueDayIsAsked) {
    run("loan.back", {{"until", "2026-09-01"}});
    EXPECT_THAT(studio.front.said, HasSubstr("before it was lent"));
    studio.desk->go({.place = Place::horns, .horn = studio.spare});
    run("loan.lend", {{"due", "2026-11-01"}});
    EXPECT_THAT(studio.front.said, HasSubstr("due before it is lent"));
    EXPECT_TRUE(loans(studio.spare).empty());
}

TEST_F(Lending, AFormIsSignedAndUnsigned) {
    run("loan.signed");
    EXPECT_EQ(loans(studio.tuba).front().signed_on, test_day);
    EXPECT_EQ(menu_text(action("loan.signed"), *studio.desk), "Form not si&gned");
    run("loan.signed");
    EXPECT_FALSE(loans(studio.tuba).front().signed_on);
}

TEST_F(Lending, WorkThatIsDueAgainIsDoneAsAnEntryOfItsOwn) {
    auto upkeep = studio.desk->file().upkeep(studio.tuba);
    EXPECT_EQ(chosen_upkeep(*studio.desk)->what, "water key leaks");
    run("upkeep.done");
    EXPECT_EQ(studio.desk->file().upkeep(studio.tuba).size(), upkeep.size());
    for (const auto& work : upkeep)
        if (work.done_on) studio.desk->choose(Table::upkeep, work.id.number);
    run("upkeep.done");
    upkeep = studio.desk->file().upkeep(studio.tuba);
    ASSERT_EQ(upkeep.size(), 3U);
    EXPECT_EQ(upkeep.back().done_on, test_day);
    EXPECT_EQ(upkeep.back().next_due, test_day + 365);
}

TEST_F(Lending, AmountsThatAreNoneAreAskedAgain) {
    const auto before = studio.dump();
    run("upkeep.add", {{"cost", "a lot"}});
    EXPECT_EQ(studio.dump(), before);
    EXPECT_THAT(studio.front.said, HasSubstr("\"a lot\" is no amount"));
    run("upkeep.add", {{"work", "repaired"}});
    EXPECT_THAT(studio.front.said, HasSubstr("Say what is to be done"));
    run("upkeep.add", {{"cost", "12,50 EUR"}});
    EXPECT_EQ(studio.desk->file().upkeep(studio.tuba).back().cost, (studio::Money{1250, "EUR"}));
}

TEST_F(Lending, RemovingAStudentSaysWhatGoes) {
    studio.desk->go({.place = Place::students, .student = studio.ada});
    studio.front.agrees = false;
    run("student.remove");
    EXPECT_THAT(studio.front.said,
                HasSubstr("With it go: 1 loan, their routines and practice, their pieces and events."));
}

TEST_F(Lending, MoreIsKnownOfAHornAndAStudent) {
    run("horn.more", {{"tag", "INV-7"}, {"value", "1250,50 EUR"}, {"bought_on", "2019-08-01"}});
    EXPECT_EQ(studio.desk->horn()->inventory_tag, "INV-7");
    EXPECT_EQ(studio.desk->horn()->value, (studio::Money{125050, "EUR"}));
    studio.desk->go({.place = Place::students, .student = studio.ada});
    run("student.more", {{"at_home", "nothing"}, {"phone", "01"}, {"since", "2024-02-29"}});
    EXPECT_EQ(studio.desk->student()->at_home, studio::AtHome::nothing);
    EXPECT_EQ(studio.desk->student()->guardian.phone, "01");
    EXPECT_EQ(studio.desk->student()->since, studio::Date(2024, 2, 29));
}

}  // namespace
}  // namespace lowledger::desk
