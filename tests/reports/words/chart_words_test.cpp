#include "reports/words/chart_words.h"

#include <gmock/gmock.h>

#include "reports/words/names.h"

namespace lowledger::words {
namespace {

using namespace units::literals;

const horns::HornKind& kind_of(std::string_view id) {
    const auto* const kind = horns::find_kind(horns::built_in_kinds(), id);
    if (kind == nullptr) throw std::logic_error("no such kind");
    return *kind;
}

Speech speech_of(const Words& words, const horns::HornKind& kind, std::size_t reader = 0) {
    return {words, kind, {.reader = kind.readers.at(reader)}};
}

const units::Pitch g_flat_3(54);

TEST(ChartWords, NotesAreTheReaders) {
    const Words words;
    const auto treble = speech_of(words, kind_of("euphonium-4-comp"), 1);
    EXPECT_EQ(both_written_names(treble, g_flat_3), "A\u266D/G\u266F");
    EXPECT_EQ(both_written_names(treble, units::Pitch(59)), "C\u266F/D\u266D");
    EXPECT_THAT(written_sentence(treble), testing::HasSubstr("where you read C, a tuner shows B\u266D."));
    const auto bass = speech_of(words, kind_of("euphonium-4-comp"));
    EXPECT_EQ(both_written_names(bass, units::Pitch(59)), "B");
    EXPECT_EQ(written_sentence(bass), "Written in bass clef.");
}

TEST(ChartWords, SlideMovesOnlyWhereThereIsSlide) {
    const auto& trombone = kind_of("tenor-trombone");
    EXPECT_EQ(slide_move(trombone, {{}, 3}, 0_cents), "0");
    EXPECT_EQ(slide_move(trombone, {{}, 3}, -31_cents).substr(0, 3), "\u2212");
    EXPECT_EQ(slide_move(trombone, {{}, 3}, 14_cents).front(), '+');
    EXPECT_EQ(slide_move(trombone, {{}, 1}, -14_cents), "");
    EXPECT_EQ(slide_move(kind_of("bbb-tuba-3"), {}, 14_cents), "");
}

TEST(ChartWords, EveryNoteWhoseUsualWayIsNotTheFirstIsExplained) {
    const Words words;
    for (const auto& kind : horns::built_in_kinds()) {
        const auto speech = speech_of(words, kind);
        const auto chart = horns::chart(kind);
        const auto sentences = usual_sentences(speech, chart);
        for (const auto& note : chart) {
            if (note.because == horns::UsualBecause::ranks_first) continue;
            EXPECT_THAT(sentences, testing::Contains(testing::HasSubstr(
                                       " " + note_name_with_octave(note.note, speech.style) + " ")))
                << kind.id;
        }
    }
}

TEST(ChartWords, WhatLiesBeyondTheSlideIsSaid) {
    const Words words;
    // Common practice: low B has no place on the F attachment's slide without the E pull.
    EXPECT_THAT(reach_sentences(speech_of(words, kind_of("tenor-trombone-f"))),
                testing::Contains(
                    testing::AllOf(testing::HasSubstr("Beyond the end"), testing::HasSubstr("B1 in 7+F"))));
    EXPECT_THAT(reach_sentences(speech_of(words, kind_of("tenor-trombone"))),
                testing::Contains(testing::HasSubstr("No way to sound, from the pedal note up: B1")));
    EXPECT_THAT(reach_sentences(speech_of(words, kind_of("bass-trombone-gb"))), testing::IsEmpty());
}

}  // namespace
}  // namespace lowledger::words
