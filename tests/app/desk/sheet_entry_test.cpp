#include "app/desk/sheet_entry.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace lowledger::desk {
namespace {

using Kind = SheetEntry::Outcome::Kind;
using testing::HasSubstr;
using testing::SizeIs;

const horns::HornKind& tuba() {
    return *horns::find_kind(horns::built_in_kinds(), "bbb-tuba-3");
}

SheetEntry new_entry(bool more = false) {
    return {tuba(),
            studio::TuningSheet{.id = {}, .student = {}, .horn = {}, .on = studio::Date(2026, 11, 25)}, more};
}

TEST(SheetEntry, BeginsWithFiveToSevenTuningNotesInWorkingOrder) {
    for (const char* id : {"bbb-tuba-3", "bbb-tuba-4"}) {
        const auto* kind = horns::find_kind(horns::built_in_kinds(), id);
        const SheetEntry entry(*kind, new_entry().sheet(), false);
        EXPECT_GE(entry.rows().size(), 5U) << id;
        EXPECT_LE(entry.rows().size(), 7U) << id;
        for (std::size_t i = 0; i < kind->tuning_order.size(); ++i)
            EXPECT_EQ(entry.rows()[i].note, kind->tuning_order[i].note) << id;
    }
}

TEST(SheetEntry, MoreNotesCoverTheRangeAfterTheTuningNotes) {
    const auto few = new_entry();
    const auto all = new_entry(true);
    ASSERT_GT(all.rows().size(), few.rows().size());
    EXPECT_TRUE(std::equal(few.rows().begin(), few.rows().end(), all.rows().begin()));
    for (std::size_t i = few.rows().size() + 1; i < all.rows().size(); ++i)
        EXPECT_LE(all.rows()[i - 1].note, all.rows()[i].note);
}

TEST(SheetEntry, TakesTheTunersOwnWords) {
    auto entry = new_entry();
    EXPECT_EQ(entry.type({0, 1}, "-7").kind, Kind::taken);
    EXPECT_EQ(entry.reading({0, 1}), units::Cents(-7));
    EXPECT_EQ(entry.type({0, 1}, "\u22127,5").kind, Kind::taken);
    EXPECT_EQ(entry.reading({0, 1}), units::Cents(-7.5));
    EXPECT_EQ(entry.text({0, 1}), "-7.5");
    EXPECT_EQ(entry.type({0, 1}, "-7.5").kind, Kind::unchanged);
    EXPECT_EQ(entry.type({0, 1}, "").kind, Kind::taken);
    EXPECT_FALSE(entry.reading({0, 1}));
}

TEST(SheetEntry, ANeighboursNameIsAskedAboutAndTakenOnASecondEnter) {
    auto entry = new_entry();
    // The first row is B-flat; a tuner that shows B-45 hears it 55 cents sharp.
    const auto asked = entry.type({0, 1}, "B-45");
    EXPECT_EQ(asked.kind, Kind::asks);
    EXPECT_THAT(asked.sentence, HasSubstr("+55"));
    EXPECT_FALSE(entry.reading({0, 1}));
    EXPECT_EQ(entry.question(0), asked.sentence);
    EXPECT_EQ(entry.text({0, 1}), "B-45");
    EXPECT_EQ(entry.type({0, 1}, "B-45").kind, Kind::taken);
    EXPECT_EQ(entry.reading({0, 1}), units::Cents(55));
    EXPECT_EQ(entry.text({0, 1}), "+55");
}

TEST(SheetEntry, WhatIsRefusedStaysInTheFieldAndOutOfTheSheet) {
    auto entry = new_entry();
    entry.type({1, 1}, "+4");
    for (const char* typed : {"700", "sharp", "+120"}) {
        EXPECT_EQ(entry.type({1, 1}, typed).kind, Kind::refused) << typed;
        EXPECT_EQ(entry.text({1, 1}), typed);
        EXPECT_EQ(entry.reading({1, 1}), units::Cents(4));
        EXPECT_FALSE(entry.question(1).empty());
    }
    entry.restore({1, 1});
    EXPECT_EQ(entry.text({1, 1}), "+4");
    EXPECT_TRUE(entry.question(1).empty());
}

TEST(SheetEntry, EnterGoesDownATakeThenToTheNext) {
    auto entry = new_entry();
    const std::size_t rows = entry.rows().size();
    Cell cell{0, 1};
    for (int take = 1; take <= 2; ++take) {
        for (std::size_t row = 0; row < rows; ++row) {
            EXPECT_EQ(cell, (Cell{row, take}));
            EXPECT_EQ(entry.first_empty(), cell);
            entry.type(cell, "1");
            cell = entry.after(cell);
        }
    }
    EXPECT_EQ(entry.takes(), 3);
    EXPECT_EQ(cell, (Cell{0, 3}));
    EXPECT_THAT(entry.sheet().readings, SizeIs(2 * rows));
}

TEST(SheetEntry, MeanIsOfTheTakesThereAre) {
    auto entry = new_entry();
    EXPECT_FALSE(entry.mean(0));
    entry.type({0, 1}, "4");
    entry.type({0, 2}, "-1");
    EXPECT_EQ(entry.mean(0), units::Cents(1.5));
}

}  // namespace
}  // namespace lowledger::desk
