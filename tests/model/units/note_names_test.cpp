#include "model/units/note_names.h"

#include <gtest/gtest.h>
#include <string>
#include <vector>

namespace lowledger::units {
namespace {

std::vector<Spelling> all_spellings() {
    std::vector<Spelling> all;
    for (int letter = 0; letter < 7; ++letter) {
        for (int alteration = -2; alteration <= 2; ++alteration)
            all.push_back({static_cast<Letter>(letter), alteration, 3});
    }
    return all;
}

TEST(NoteNames, EveryNameReadsBackInEveryNaming) {
    for (const Spelling& spelling : all_spellings()) {
        for (const Naming naming : {Naming::english, Naming::german, Naming::solfege}) {
            const std::string name = note_name(spelling, naming) + "3";
            EXPECT_EQ(parse_note(name, naming), spelling) << name;
        }
    }
}

/// The names as German theory books give them (common practice, from memory).
TEST(NoteNames, German) {
    const std::pair<Spelling, const char*> names[] = {
        {{Letter::b, -1, 2}, "B"},     {{Letter::b, 0, 2}, "H"},    {{Letter::b, 1, 2}, "His"},
        {{Letter::b, -2, 2}, "Heses"}, {{Letter::e, -1, 2}, "Es"},  {{Letter::a, -1, 2}, "As"},
        {{Letter::a, -2, 2}, "Ases"},  {{Letter::g, -1, 2}, "Ges"}, {{Letter::f, 1, 2}, "Fis"},
        {{Letter::c, 2, 2}, "Cisis"},  {{Letter::d, -1, 2}, "Des"},
    };
    for (const auto& [spelling, name] : names)
        EXPECT_EQ(note_name(spelling, Naming::german), name);
}

TEST(NoteNames, TheSameTypedNameMeansAnotherNoteInGerman) {
    EXPECT_EQ(pitch_of(parse_note("B2", Naming::english).value()), Pitch(47));
    EXPECT_EQ(pitch_of(parse_note("B2", Naming::german).value()), Pitch(46));
    EXPECT_EQ(pitch_of(parse_note("h2", Naming::german).value()), Pitch(47));
    EXPECT_FALSE(parse_note("H2", Naming::english));
}

TEST(NoteNames, SolfegeReadsItsVariants) {
    EXPECT_EQ(note_name({Letter::b, -1, 2}, Naming::solfege), "Si♭");
    EXPECT_EQ(parse_note("sib2", Naming::solfege), (Spelling{Letter::b, -1, 2}));
    EXPECT_EQ(parse_note("Ti♭2", Naming::solfege), (Spelling{Letter::b, -1, 2}));
    EXPECT_EQ(parse_note("so3", Naming::solfege), (Spelling{Letter::g, 0, 3}));
    EXPECT_EQ(parse_note("sol#3", Naming::solfege), (Spelling{Letter::g, 1, 3}));
    EXPECT_EQ(parse_note("ré4", Naming::solfege), (Spelling{Letter::d, 0, 4}));
}

TEST(NoteNames, WhatIsNoNoteIsRefused) {
    for (const char* text : {"", "B", "X2", "Hes", "Fisis", "B22", "doh2", "2"}) {
        EXPECT_FALSE(parse_note(text, Naming::german)) << text;
        EXPECT_FALSE(parse_note(text, Naming::solfege)) << text;
    }
}

}  // namespace
}  // namespace lowledger::units
