#include "model/units/pitch.h"

#include <gtest/gtest.h>

#include "model/units/refusal.h"

namespace lowledger::units {
namespace {

TEST(Pitch, EveryNameReadsBackAsItsPitch) {
    for (int midi = 0; midi < 128; ++midi) {
        const Pitch pitch(midi);
        EXPECT_EQ(pitch_of(spell(pitch, Accidentals::flats)), pitch);
        EXPECT_EQ(pitch_of(spell(pitch, Accidentals::sharps)), pitch);
        EXPECT_EQ(parse_pitch(file_name(pitch)), pitch);
    }
}

TEST(Pitch, OutsideMidiIsRefused) {
    EXPECT_THROW(Pitch(-1), Refusal);
    EXPECT_THROW(Pitch(128), Refusal);
}

TEST(Pitch, MovesBySemitones) {
    EXPECT_EQ(Pitch(46) + Semitones{12}, Pitch(58));
    EXPECT_EQ(Pitch(46) - Semitones{12}, Pitch(34));
    EXPECT_EQ((Pitch(58) - Pitch(46)).count, 12);
    EXPECT_THROW(Pitch(120) + Semitones{12}, Refusal);
}

TEST(Spelling, FlatsAndSharpsOfOneKey) {
    EXPECT_EQ(spell(Pitch(46)), (Spelling{Letter::b, -1, 2}));
    EXPECT_EQ(spell(Pitch(46), Accidentals::sharps), (Spelling{Letter::a, 1, 2}));
    EXPECT_EQ(file_name(spell(Pitch(54), Accidentals::sharps)), "F#3");
    EXPECT_EQ(file_name(Pitch(54)), "Gb3");
}

TEST(Spelling, OctavesChangeAtC) {
    EXPECT_EQ(pitch_of({Letter::c, 0, 4}), Pitch(60));
    EXPECT_EQ(pitch_of({Letter::b, 0, 3}), Pitch(59));
    EXPECT_EQ(pitch_of({Letter::b, 1, 3}), Pitch(60)) << "B sharp 3 sounds as C4";
    EXPECT_EQ(pitch_of({Letter::c, -1, 4}), Pitch(59)) << "C flat 4 sounds as B3";
    EXPECT_EQ(pitch_of({Letter::c, 0, -1}), Pitch(0));
}

TEST(Spelling, StaffStepsCountLettersOnly) {
    EXPECT_EQ((Spelling{Letter::c, 0, 4}.diatonic_step()), 28);
    EXPECT_EQ((Spelling{Letter::b, -1, 3}.diatonic_step()), 27);
}

TEST(Spelling, EveryFormOfANameIsUnderstood) {
    const std::pair<const char*, int> names[] = {
        {"Bb2", 46}, {"bb2", 46},  {"B\u266D2", 46}, {"A#2", 46}, {"a\u266F2", 46},
        {"C4", 60},  {"Cbb4", 58}, {"C##4", 62},     {"c-1", 0},  {"G9", 127}};
    for (const auto& [name, midi] : names)
        EXPECT_EQ(parse_pitch(name), Pitch(midi)) << name;
}

TEST(Spelling, WhatIsNoNoteIsRefused) {
    for (const char* name :
         {"", "H2", "B", "Bb", "2", "Bb22", "B#b2", "Bbbb2", "C###4", "Bb2 x", "A9", "Cb-1", "do3"})
        EXPECT_FALSE(parse_pitch(name)) << name;
}

TEST(EqualTempered, FollowsA4) {
    EXPECT_DOUBLE_EQ(equal_tempered(Pitch(69)).value(), 440.0);
    EXPECT_DOUBLE_EQ(equal_tempered(Pitch(57), Hertz(442.0)).value(), 221.0);
}

}  // namespace
}  // namespace lowledger::units
