#include "reports/engraving/staff.h"

#include <gtest/gtest.h>

namespace lowledger::engraving {
namespace {

using horns::Clef;
using units::Letter;
using units::Spelling;

Spelling named(const char* name) {
    return units::parse_spelling(name).value();
}

int position(Clef clef, const char* name) {
    return position_of(clef, named(name)).half_spaces;
}

// The definition of the clefs (common practice, as in any primer of notation): what the sign names, and where
// the outer lines follow from it.
TEST(Staff, ClefsNameTheirLine) {
    EXPECT_EQ(position(Clef::bass, "F3"), 6);
    EXPECT_EQ(position(Clef::treble, "G4"), 2);
    EXPECT_EQ(position(Clef::alto, "C4"), 4);
    EXPECT_EQ(position(Clef::tenor, "C4"), 6);
}

TEST(Staff, OuterLinesOfTheClefs) {
    EXPECT_EQ(position(Clef::bass, "G2"), 0);
    EXPECT_EQ(position(Clef::bass, "A3"), 8);
    EXPECT_EQ(position(Clef::treble, "E4"), 0);
    EXPECT_EQ(position(Clef::treble, "F5"), 8);
    EXPECT_EQ(position(Clef::alto, "F3"), 0);
    EXPECT_EQ(position(Clef::alto, "G4"), 8);
    EXPECT_EQ(position(Clef::tenor, "D3"), 0);
    EXPECT_EQ(position(Clef::tenor, "E4"), 8);
}

TEST(Staff, AccidentalsDoNotMoveANote) {
    EXPECT_EQ(position(Clef::bass, "Bb1"), position(Clef::bass, "B1"));
    EXPECT_EQ(position(Clef::bass, "F##3"), position(Clef::bass, "F3"));
}

TEST(Staff, LedgerLinesReachTheNote) {
    EXPECT_TRUE(ledger_lines({-1}).empty());
    EXPECT_TRUE(ledger_lines({9}).empty());
    EXPECT_EQ(ledger_lines({-2}), (std::vector<StaffPosition>{{-2}}));
    EXPECT_EQ(ledger_lines({-3}), (std::vector<StaffPosition>{{-2}}));
    EXPECT_EQ(ledger_lines({12}), (std::vector<StaffPosition>{{10}, {12}}));
    // A BBb tuba's pedal: six lines under the bass staff.
    EXPECT_EQ(ledger_lines(position_of(Clef::bass, named("Bb0"))).size(), 6U);
}

TEST(Staff, OnlyPedalsReadBetterAnOctaveUp) {
    const auto better = [](const char* name) {
        return reads_better_8va_bassa(position_of(Clef::bass, named(name)));
    };
    EXPECT_FALSE(better("E1"));
    EXPECT_FALSE(better("Eb1"));
    EXPECT_TRUE(better("C1"));
    EXPECT_TRUE(better("Bb0"));
    EXPECT_FALSE(reads_better_8va_bassa({20}));
}

TEST(Staff, StemsTurnAtTheMiddleLineAndReachIt) {
    EXPECT_TRUE(stem_goes_up({3}));
    EXPECT_FALSE(stem_goes_up({4}));
    EXPECT_FALSE(stem_goes_up({5}));
    EXPECT_EQ(stem_length({3}), StaffSpaces(3.5));
    EXPECT_EQ(stem_length({-8}), StaffSpaces(6.0));
    EXPECT_EQ(stem_length({16}), StaffSpaces(6.0));
}

// Circle of fifths: F C G D A E B sharp, the other way round flat.
TEST(Staff, KeysAlterTheirLetters) {
    EXPECT_EQ(alteration_in({0}, Letter::f), 0);
    EXPECT_EQ(alteration_in({1}, Letter::f), 1);
    EXPECT_EQ(alteration_in({1}, Letter::c), 0);
    EXPECT_EQ(alteration_in({-2}, Letter::b), -1);
    EXPECT_EQ(alteration_in({-2}, Letter::e), -1);
    EXPECT_EQ(alteration_in({-2}, Letter::a), 0);
    for (const Letter letter :
         {Letter::c, Letter::d, Letter::e, Letter::f, Letter::g, Letter::a, Letter::b}) {
        EXPECT_EQ(alteration_in({7}, letter), 1);
        EXPECT_EQ(alteration_in({-7}, letter), -1);
    }
}

// Common practice: the pitches that a key signature's accidentals stand on in each clef.
TEST(Staff, KeySignaturesStandWhereEngraversPutThem) {
    const auto expect = [](Clef clef, int fifths, std::initializer_list<const char*> names) {
        std::vector<StaffPosition> want;
        for (const char* name : names)
            want.push_back(position_of(clef, named(name)));
        EXPECT_EQ(key_positions(clef, {fifths}), want) << fifths;
    };
    expect(Clef::treble, 7, {"F5", "C5", "G5", "D5", "A4", "E5", "B4"});
    expect(Clef::treble, -7, {"B4", "E5", "A4", "D5", "G4", "C5", "F4"});
    expect(Clef::bass, 7, {"F3", "C3", "G3", "D3", "A2", "E3", "B2"});
    expect(Clef::bass, -7, {"B2", "E3", "A2", "D3", "G2", "C3", "F2"});
    expect(Clef::alto, 7, {"F4", "C4", "G4", "D4", "A3", "E4", "B3"});
    expect(Clef::alto, -7, {"B3", "E4", "A3", "D4", "G3", "C4", "F3"});
    expect(Clef::tenor, 7, {"F3", "C4", "G3", "D4", "A3", "E4", "B3"});
    expect(Clef::tenor, -7, {"B3", "E4", "A3", "D4", "G3", "C4", "F3"});
}

}  // namespace
}  // namespace lowledger::engraving
