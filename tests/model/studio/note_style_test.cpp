#include "model/studio/note_style.h"

#include <gtest/gtest.h>

namespace lowledger::studio {
namespace {

const horns::HornKind& euphonium() {
    return *horns::find_kind(horns::built_in_kinds(), "euphonium-4");
}

units::Pitch b_flat_3() {
    return *units::parse_pitch("Bb3");
}

TEST(NoteStyle, ATrebleClefEuphoniumReadsAMajorNinthAbove) {
    Student student;
    student.reader = "treble-b-flat";
    const auto style = note_style({}, student, euphonium());
    EXPECT_EQ(units::file_name(horns::spelt(b_flat_3(), style)), "C5");
    EXPECT_TRUE(horns::calls_notes_otherwise(style.reader));
}

TEST(NoteStyle, AReaderThatTheKindHasNotIsTheKindsFirst) {
    Student student;
    student.reader = "treble-of-another-horn";
    EXPECT_EQ(note_style({}, student, euphonium()).reader, euphonium().readers.front());
    EXPECT_FALSE(horns::calls_notes_otherwise(euphonium().readers.front()));
}

TEST(NoteStyle, TheStudentsAccidentalsStandBeforeTheStudios) {
    StudioFacts facts;
    facts.accidentals = units::Accidentals::sharps;
    facts.naming = units::Naming::german;
    Student student;
    EXPECT_EQ(note_style(facts, student, euphonium()).accidentals, units::Accidentals::sharps);
    EXPECT_EQ(note_style(facts, student, euphonium()).naming, units::Naming::german);
    student.accidentals = units::Accidentals::flats;
    EXPECT_EQ(note_style(facts, student, euphonium()).accidentals, units::Accidentals::flats);
    EXPECT_EQ(note_style(facts, euphonium()).accidentals, units::Accidentals::sharps);
}

}  // namespace
}  // namespace lowledger::studio
