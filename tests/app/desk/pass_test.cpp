#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>

#include "app/desk/action.h"
#include "app/desk/pass_entry.h"
#include "model/studio/kind_of.h"
#include "model/studio/questions.h"
#include "tests/app/desk/prepared_studio.h"

namespace lowledger::desk {
namespace {

using Kind = PassEntry::Outcome::Kind;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

pages::Player player_on(const char* kind_id) {
    const auto* kind = horns::find_kind(horns::built_in_kinds(), kind_id);
    return {{}, studio::horn_of(*kind), *kind};
}

std::vector<units::Pitch> notes(std::initializer_list<const char*> names) {
    std::vector<units::Pitch> all;
    for (const auto* name : names)
        all.push_back(*units::parse_pitch(name));
    return all;
}

PassEntry band_pass() {
    return {{player_on("bbb-tuba-4"), player_on("euphonium-4-comp"), player_on("tenor-trombone")},
            notes({"Bb2", "F2", "D3"})};
}

TEST(SectionPass, EnterGoesAlongThePlayersNotesAndOnToTheNext) {
    const auto pass = band_pass();
    std::vector<PassCell> way;
    for (auto cell = pass.first(); cell; cell = pass.after(*cell))
        way.push_back(*cell);
    ASSERT_THAT(way, SizeIs(9));
    EXPECT_EQ(way[2], (PassCell{0, 2}));
    EXPECT_EQ(way[3], (PassCell{1, 0}));
    EXPECT_EQ(pass.below({0, 1}), (PassCell{1, 1}));
    EXPECT_EQ(pass.above({0, 1}), std::nullopt);
    EXPECT_EQ(pass.below({2, 1}), std::nullopt);
}

TEST(SectionPass, AReadingMayBeLeftOut) {
    auto pass = band_pass();
    EXPECT_EQ(pass.type({0, 0}, "+12").kind, Kind::taken);
    EXPECT_EQ(pass.type({0, 1}, "").kind, Kind::unchanged);
    EXPECT_EQ(pass.type({0, 2}, "-7,5").kind, Kind::taken);
    const auto readings = pass.readings(0);
    ASSERT_THAT(readings, SizeIs(2));
    EXPECT_EQ(readings[0].cents, units::Cents(12));
    EXPECT_EQ(readings[1].cents, units::Cents(-7.5));
    EXPECT_EQ(readings[1].take, 1);
    EXPECT_THAT(pass.readings(1), IsEmpty());
    EXPECT_EQ(pass.type({0, 2}, " ").kind, Kind::taken);
    EXPECT_EQ(pass.count(), 1);
}

TEST(SectionPass, WhatIsNotTakenIsToldInItsFieldAndKept) {
    auto pass = band_pass();
    pass.type({1, 1}, "+3");
    EXPECT_EQ(pass.type({1, 1}, "abc").kind, Kind::refused);
    EXPECT_EQ(pass.text({1, 1}), "abc");
    EXPECT_FALSE(pass.question({1, 1}).empty());
    EXPECT_THAT(pass.question({1, 0}), IsEmpty());
    EXPECT_EQ(pass.reading({1, 1}), units::Cents(3));
    EXPECT_EQ(pass.type({0, 2}, "-120").kind, Kind::refused);
    EXPECT_EQ(pass.first_pending(), (PassCell{0, 2}));
    pass.restore({0, 2});
    EXPECT_EQ(pass.text({0, 2}), "");
    EXPECT_EQ(pass.type({1, 1}, "+4").kind, Kind::taken);
    EXPECT_EQ(pass.first_pending(), std::nullopt);
}

TEST(SectionPass, BeyondFiftyItAsksAndTheSameTextOnceMoreIsTaken) {
    auto pass = band_pass();
    EXPECT_EQ(pass.type({0, 0}, "+60").kind, Kind::asks);
    EXPECT_TRUE(pass.asks({0, 0}));
    EXPECT_EQ(pass.count(), 0);
    EXPECT_EQ(pass.type({0, 0}, "+60").kind, Kind::taken);
    EXPECT_EQ(pass.reading({0, 0}), units::Cents(60));
    EXPECT_FALSE(pass.asks({0, 0}));
}

TEST(SectionPass, ANoteThatComesTwiceIsTakenTwice) {
    PassEntry pass({player_on("bbb-tuba-3")}, notes({"Bb2", "F2", "Bb1"}));
    for (std::size_t note = 0; note < 3; ++note)
        pass.type({0, note}, "+" + std::to_string(note));
    const auto readings = pass.readings(0);
    ASSERT_THAT(readings, SizeIs(3));
    EXPECT_EQ(readings[0].note, readings[2].note);
    EXPECT_EQ(readings[2].take, 2);
}

/// Ada on T-1 and Ben on T-2.
void let_both_play(PreparedStudio& studio) {
    studio.desk->file().edit("both", [&](store::Edit& edit) {
        edit.add(studio::HornUse{{}, studio.ben, studio.spare, studio::Date(2026, 9, 7), std::nullopt});
    });
}

TEST(SectionPass, FilesASheetForEveryPlayerWithReadingsAsOneStep) {
    PreparedStudio studio;
    let_both_play(studio);
    studio.front.slip = {{"notes", "Bb2 F2 D3 F3"}, {"on", "2026-11-24"}, {"warm", ""}};
    studio.front.types_pass = [](PassEntry& pass) {
        for (std::size_t note = 0; note < 4; ++note)
            pass.type({0, note}, "+" + std::to_string(10 + note));
        pass.type({1, 2}, "-5");
        return true;
    };
    const auto before = studio.dump();
    action("pass.type").run(*studio.desk);
    EXPECT_THAT(studio.front.said, HasSubstr("Section pass, 24 November 2026"));
    const auto sheets = studio.desk->file().sheets(studio.ada);
    ASSERT_THAT(sheets, SizeIs(1));
    EXPECT_EQ(sheets.front().on, studio::Date(2026, 11, 24));
    EXPECT_FALSE(sheets.front().warm);
    EXPECT_THAT(sheets.front().readings, SizeIs(4));
    EXPECT_EQ(sheets.front().positions.at("main"), units::Millimetres(20));
    ASSERT_THAT(studio.desk->file().sheets(studio.ben), SizeIs(1));
    EXPECT_THAT(studio.desk->file().sheets(studio.ben).front().readings, SizeIs(1));
    EXPECT_EQ(studio.desk->file().undo_name(), "Section pass of 24 November 2026");
    action("edit.undo").run(*studio.desk);
    EXPECT_EQ(studio.dump(), before);
    studio.desk->settle();
}

TEST(SectionPass, ThrownAwayOrEmptyItFilesNothing) {
    PreparedStudio studio;
    studio.front.slip = std::map<std::string, std::string>{};
    const auto before = studio.dump();
    studio.front.types_pass = [](PassEntry& pass) {
        pass.type({0, 0}, "+5");
        return false;
    };
    action("pass.type").run(*studio.desk);
    studio.front.types_pass = [](PassEntry& /*pass*/) { return true; };
    action("pass.type").run(*studio.desk);
    EXPECT_EQ(studio.dump(), before);
    studio.front.slip = std::map<std::string, std::string>{{"on", "2026-11-26"}};
    action("pass.type").run(*studio.desk);
    EXPECT_THAT(studio.front.said, HasSubstr("still to come"));
}

}  // namespace
}  // namespace lowledger::desk
