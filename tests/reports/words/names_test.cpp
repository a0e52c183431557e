#include "reports/words/names.h"

#include <gtest/gtest.h>

namespace lowledger::words {
namespace {

using namespace units::literals;

horns::HornKind tuba() {
    return *horns::find_kind(horns::built_in_kinds(), "bbb-tuba-4");
}

horns::HornKind bass_trombone() {
    auto kind = tuba();
    kind.valves.resize(2);
    kind.valves[0].label = "F";
    kind.valves[1].label = "Gb";
    kind.hand_slide = 620_mm;
    return kind;
}

std::string played(const horns::HornKind& kind, const horns::Fingering& fingering) {
    return played_note(Words(), kind, note_name(units::Pitch(34), {}), fingering);
}

TEST(Names, CentsAreWholeWithTheirSign) {
    EXPECT_EQ(cents_text(12.4_cents), "+12");
    EXPECT_EQ(cents_text(units::Cents(-6.6)), "\u22127");
    EXPECT_EQ(cents_text(units::Cents(-0.4)), "0");
    EXPECT_EQ(whole_cents(units::Cents(-6.6)), 7);
}

TEST(Names, MillimetresKeepTheirUnitOnTheLine) {
    EXPECT_EQ(millimetres_text(34.7_mm), "35\u00A0mm");
    EXPECT_EQ(millimetres_text(34.7_mm, 1), "34.7\u00A0mm");
}

TEST(Names, AccidentalsAreSigns) {
    EXPECT_EQ(note_name(units::Pitch(34), {}), "B\u266D");
    EXPECT_EQ(note_name(units::Pitch(42), {.accidentals = units::Accidentals::sharps}), "F\u266F");
    EXPECT_EQ(note_name_with_octave(units::Pitch(34), {}), "B\u266D1");
}

TEST(Names, NotesAreTheReadersInTheirLanguage) {
    const units::Pitch b_flat_2(46);
    const horns::NoteStyle treble{
        .reader = {.id = "t", .name = "treble", .clef = horns::Clef::treble, .written_above = {14}}};
    EXPECT_EQ(note_name(b_flat_2, treble), "C");
    EXPECT_EQ(note_name_with_octave(b_flat_2, treble), "C4");
    EXPECT_EQ(tuner_name(b_flat_2, treble), "B\u266D");
    EXPECT_EQ(note_and_tuner_name(Words(), b_flat_2, treble),
              "C4 (tuner\u00A0"
              "B\u266D)");
    EXPECT_EQ(note_and_tuner_name(Words(), b_flat_2, {}), "B\u266D2");
    EXPECT_EQ(note_name(b_flat_2, {.naming = units::Naming::german}), "B");
    EXPECT_EQ(note_name(units::Pitch(47), {.naming = units::Naming::german}), "H");
    EXPECT_EQ(tuner_name(b_flat_2, {.naming = units::Naming::solfege}), "Si\u266D");
}

TEST(Names, FingeringsAsTheyStandUnderANote) {
    EXPECT_EQ(fingering_label(tuba(), {{}, 0}), "0");
    EXPECT_EQ(fingering_label(tuba(), {{1, 2, 4}, 0}), "1-2-4");
    EXPECT_EQ(fingering_label(bass_trombone(), {{}, 3}), "3");
    EXPECT_EQ(fingering_label(bass_trombone(), {{1, 2}, 2}), "2+F+G\u266D");
}

TEST(Names, FiguresAreAsShortAsTheyCanBe) {
    EXPECT_EQ(fingering_figure(tuba(), {{1, 2, 4}, 0}), "124");
    EXPECT_EQ(fingering_figure(bass_trombone(), {{1}, 2}), "2+F");
}

TEST(Names, ANoteAsItIsPlayed) {
    EXPECT_EQ(played(tuba(), {{}, 0}),
              "open\u00A0"
              "B\u266D");
    EXPECT_EQ(played(tuba(), {{4}, 0}),
              "B\u266D with valve\u00A0"
              "4");
    EXPECT_EQ(played(tuba(), {{1, 3}, 0}),
              "B\u266D with valves\u00A0"
              "1-3");
    EXPECT_EQ(played(bass_trombone(), {{1}, 2}), "B\u266D in position 2 with F");
    EXPECT_EQ(played(bass_trombone(), {{}, 1}),
              "B\u266D in position\u00A0"
              "1");
}

TEST(Names, DatesAreWrittenOut) {
    EXPECT_EQ(date_text(Words(), {2026, 11, 5}), "5 November 2026");
}

TEST(Names, AKindsFlatsAreSigns) {
    auto kind = tuba();
    kind.name = "BBb tuba, E and Bb, B tub";
    EXPECT_EQ(kind_name(kind), "BB\u266D tuba, E and B\u266D, B tub");
}

}  // namespace
}  // namespace lowledger::words
