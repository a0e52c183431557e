#include "reports/engraving/music_text.h"

#include <gtest/gtest.h>
#include <random>

#include "model/units/refusal.h"
#include "tests/reports/engraving/sample_music.h"

namespace lowledger::engraving {
namespace {

std::string refusal_of(std::string_view text) {
    try {
        parse_music(text);
    } catch (const units::Refusal& refusal) {
        return refusal.what();
    }
    return "";
}

bool starts(const std::string& text, std::string_view start) {
    return text.substr(0, start.size()) == start;
}

std::vector<std::string> names_of(const MusicLine& line) {
    std::vector<std::string> names;
    for (const Event& event : line.events) {
        if (const auto* note = std::get_if<LineNote>(&event))
            names.push_back(units::file_name(note->spelling));
    }
    return names;
}

std::vector<std::string> moved(std::string_view text, int semitones) {
    return names_of(transposed(parse_music(text), {semitones}));
}

TEST(MusicText, ReadsEverySign) {
    const MusicLine line = parse_music(
        "clef=tenor key=2b time=3/4 tempo=\"Slow\"\n p < (Bb2/4[12] C3{+14}) \"hold\" Eb3/4~ | Eb3/2.^, |.");
    EXPECT_EQ(line.clef, horns::Clef::tenor);
    EXPECT_EQ(line.key.fifths, -2);
    EXPECT_EQ(line.time, (TimeSignature{3, 4}));
    EXPECT_EQ(line.tempo, "Slow");
    ASSERT_EQ(line.events.size(), 6U);
    const auto& first = std::get<LineNote>(line.events[0]);
    EXPECT_EQ(first.figure, "12");
    EXPECT_EQ(first.dynamic, Dynamic::p);
    EXPECT_EQ(first.hairpin, Hairpin::louder);
    EXPECT_TRUE(first.slur_starts);
    const auto& second = std::get<LineNote>(line.events[1]);
    EXPECT_EQ(second.tendency, units::Cents(14.0));
    EXPECT_EQ(second.duration, Duration::quarter);
    EXPECT_TRUE(second.slur_ends);
    const auto& third = std::get<LineNote>(line.events[2]);
    EXPECT_TRUE(third.tied);
    EXPECT_EQ(third.words, "hold");
    const auto& last = std::get<LineNote>(line.events[4]);
    EXPECT_EQ(last.duration, Duration::half);
    EXPECT_EQ(last.dots, 1);
    EXPECT_TRUE(last.fermata);
    EXPECT_TRUE(last.breath);
    EXPECT_EQ(std::get<BarLine>(line.events[5]), BarLine::final_line);
}

TEST(MusicText, WhatIsWrittenReadsBackEqual) {
    for (unsigned seed = 1; seed <= 300; ++seed) {
        const MusicLine line = random_music(seed);
        EXPECT_EQ(parse_music(music_text(line)), line) << music_text(line);
    }
}

TEST(MusicText, RefusalsNameTheColumn) {
    EXPECT_TRUE(starts(refusal_of("Bb2/4 H3/8"), "Music, column 7: \"H3\" is no note"));
    EXPECT_TRUE(starts(refusal_of("Bb2/4\n C3/3"), "Music, line 2, column 5: \"3\" is no length"));
    EXPECT_TRUE(starts(refusal_of("clef=soprano C3"), "Music, column 6: \"soprano\" is no clef"));
    EXPECT_TRUE(starts(refusal_of("key=8b"), "Music, column 5: \"8b\" is no key"));
    EXPECT_TRUE(starts(refusal_of("time=4/3"), "Music, column 6: \"4/3\" is no time"));
    EXPECT_TRUE(starts(refusal_of("tempo=Slow"), "Music, column 7: Put the tempo"));
    EXPECT_TRUE(starts(refusal_of("C3 key=1b"), "Music, column 4: \"key\" must stand before"));
    EXPECT_TRUE(starts(refusal_of("key=1b key=2b"), "Music, column 8: \"key\" stands here twice"));
    EXPECT_TRUE(starts(refusal_of("pitch=3"), "Music, column 1: \"pitch\" is unknown"));
    EXPECT_TRUE(starts(refusal_of("(C3 D3"), "Music, column 1: This slur is not closed"));
    EXPECT_TRUE(starts(refusal_of("(C3 (D3)"), "Music, column 5: A slur is open"));
    EXPECT_TRUE(starts(refusal_of("C3 D3)"), "Music, column 6: No slur is open"));
    EXPECT_TRUE(starts(refusal_of("C3~ D3"), "Music, column 3: This tie leads to another"));
    EXPECT_TRUE(starts(refusal_of("C3~"), "Music, column 3: This tie leads to no note"));
    EXPECT_TRUE(starts(refusal_of("C3~ r"), "Music, column 3: This tie leads to a rest"));
    EXPECT_TRUE(starts(refusal_of("C3[12"), "Music, column 3: Here a closing ]"));
    EXPECT_TRUE(starts(refusal_of("C3{flat}"), "Music, column 3: \"flat\" is no number"));
    EXPECT_TRUE(starts(refusal_of("C3*"), "Music, column 1: \"C3*\" is no note"));
    EXPECT_TRUE(starts(refusal_of("C3/4x"), "Music, column 4: \"4x\" is no length"));
    EXPECT_TRUE(starts(refusal_of("C3 mf"), "Music, column 4: After this a note"));
    EXPECT_TRUE(starts(refusal_of("mf | C3"), "Music, column 1: After this a note"));
    EXPECT_TRUE(starts(refusal_of("r/4[1]"), "Music, column 4: A rest takes"));
    EXPECT_TRUE(starts(refusal_of("C3."), "Music, column 3: \".\" has no meaning"));
}

TEST(MusicText, BarsAreAsLongAsTheirTime) {
    EXPECT_TRUE(starts(refusal_of("time=2/4 C3/4 D3 E3 | F3/2 |."), "Music, column 18: Bar 1 is longer"));
    EXPECT_TRUE(starts(refusal_of("time=2/4 C3/2 | D3/4 | F3/2 |."), "Music, column 22: Bar 2 is shorter"));
    EXPECT_EQ(refusal_of("time=2/4 C3/4 | D3/4 E3 | F3/4 |."), "");
    EXPECT_EQ(refusal_of("time=2/4 C3/2 | D3/4 :| F3/4 | C3/2 |."), "");
    EXPECT_EQ(refusal_of(""), "");
}

TEST(MusicText, RandomBytesAreRefusedOrRead) {
    constexpr std::string_view alphabet = "ABCbr#123/48.|:()[]{}~^,\"<>=pmf \n\xC3";
    std::mt19937 random(7);
    for (int i = 0; i < 20000; ++i) {
        std::string text;
        for (auto n = random() % 24; n > 0; --n)
            text += alphabet[random() % alphabet.size()];
        try {
            const MusicLine line = parse_music(text);
            EXPECT_EQ(parse_music(music_text(line)).events.size(), line.events.size()) << text;
        } catch (const units::Refusal& refusal) {
            EXPECT_TRUE(starts(refusal.what(), "Music, ")) << text;
        }
    }
}

TEST(Transposition, KeepsEachNotesPlaceInTheKey) {
    // The B-flat major scale, and its raised fourth, as a euphonium in treble clef reads it: C major.
    using Names = std::vector<std::string>;
    const MusicLine scale = parse_music("key=2b Bb2 C3 D3 Eb3 E3 F3 G3 A3");
    const MusicLine part = for_reader(scale, {"treble-b-flat", "treble clef", horns::Clef::treble, {14}});
    EXPECT_EQ(part.clef, horns::Clef::treble);
    EXPECT_EQ(part.key.fifths, 0);
    EXPECT_EQ(names_of(part), (Names{"C4", "D4", "E4", "F4", "F#4", "G4", "A4", "B4"}));
    EXPECT_EQ(moved("key=0 C3 B2 F#3", 2), (Names{"D3", "C#3", "G#3"}));
    EXPECT_EQ(moved("key=0 C3 B2 F#3", 1), (Names{"Db3", "C3", "G3"}));
    EXPECT_EQ(moved("key=0 C3 Bb2", 6), (Names{"Gb3", "Fb3"}));
    EXPECT_EQ(moved("key=2b Bb2", -12), (Names{"Bb1"}));
}

TEST(Transposition, SoundsAsFarAwayAndComesBack) {
    for (unsigned seed = 1; seed <= 200; ++seed) {
        const MusicLine line = random_music(seed);
        for (const int by : {-14, -7, -1, 1, 2, 5, 6, 9, 14}) {
            const MusicLine there = transposed(line, {by});
            EXPECT_GE(there.key.fifths, -6);
            EXPECT_LE(there.key.fifths, 5);
            for (std::size_t i = 0; i < line.events.size(); ++i) {
                const auto* was = std::get_if<LineNote>(&line.events[i]);
                if (was == nullptr) continue;
                const auto& is = std::get<LineNote>(there.events[i]);
                EXPECT_EQ((units::pitch_of(is.spelling) - units::pitch_of(was->spelling)).count, by);
                EXPECT_LE(std::abs(is.spelling.alteration), std::max(1, std::abs(was->spelling.alteration)));
            }
        }
    }
}

TEST(Transposition, FiguresStayWithTheSoundTheyWereMadeFor) {
    const MusicLine line = parse_music("key=2b Bb2/4[0]{+4}~ | Bb2 C3[13]");
    const MusicLine part = for_reader(line, {"treble-b-flat", "", horns::Clef::treble, {14}});
    EXPECT_EQ(std::get<LineNote>(part.events[0]).figure, "0");
    EXPECT_EQ(std::get<LineNote>(part.events[0]).tendency, units::Cents(4.0));
    const MusicLine up = transposed(line, {2});
    EXPECT_EQ(std::get<LineNote>(up.events[0]).figure, "");
    EXPECT_EQ(std::get<LineNote>(up.events[0]).tendency, std::nullopt);
    const MusicLine anew = with_figures(
        up, [](units::Pitch pitch) { return std::to_string(pitch.midi()); },
        [](units::Pitch /*pitch*/) { return std::optional(units::Cents(-3.0)); });
    EXPECT_EQ(std::get<LineNote>(anew.events[0]).figure, "48");
    EXPECT_EQ(std::get<LineNote>(anew.events[0]).tendency, units::Cents(-3.0));
    EXPECT_EQ(std::get<LineNote>(anew.events[2]).figure, "");
    EXPECT_EQ(std::get<LineNote>(anew.events[3]).figure, "50");
}

TEST(Transposition, PastTheHighestPitchIsRefused) {
    EXPECT_THROW(transposed(parse_music("G9"), {14}), units::Refusal);
}

}  // namespace
}  // namespace lowledger::engraving
