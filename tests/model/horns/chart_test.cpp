#include "model/horns/chart.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace lowledger::horns {
namespace {

using acoustics::ValveSet;
using units::Cents;
using units::Pitch;

const HornKind& kind_of(std::string_view id) {
    const HornKind* kind = find_kind(built_in_kinds(), id);
    if (kind == nullptr) throw std::runtime_error("no kind " + std::string(id));
    return *kind;
}

Pitch note(const char* name) {
    return units::parse_pitch(name).value();
}

std::string usual(std::string_view id, const char* name) {
    const HornKind& kind = kind_of(id);
    return file_text(chart_note(kind, note(name)).value().usual.fingering, kind.valve_labels());
}

TEST(Chart, EveryWaySoundsItsNote) {
    for (const HornKind& kind : built_in_kinds()) {
        for (int midi = kind.usual_range.low.midi(); midi <= kind.usual_range.high.midi(); ++midi) {
            for (const Way& way : possible_fingerings(kind, Pitch(midi))) {
                EXPECT_TRUE(kind.allows(way.fingering)) << kind.id << " " << midi;
                EXPECT_LE(units::abs(way.lean), Cents(75.0)) << kind.id << " " << midi;
                if (way.tone == Tone::false_tone) continue;
                const auto lean =
                    acoustics::lean(designed_length(kind, way.fingering), way.partial, Pitch(midi));
                EXPECT_NEAR(way.lean.value(), lean.value(), 1e-9) << kind.id << " " << midi;
            }
        }
    }
}

TEST(Chart, EveryNoteOfTheUsualRangeHasAUsualFingering) {
    for (const HornKind& kind : built_in_kinds()) {
        const auto notes = chart(kind);
        EXPECT_EQ(notes.size(),
                  static_cast<std::size_t>((kind.usual_range.high - kind.usual_range.low).count + 1))
            << kind.id;
        for (const ChartNote& entry : notes) {
            EXPECT_NE(entry.usual.tone, Tone::false_tone) << kind.id << " " << units::file_name(entry.note);
            EXPECT_TRUE(entry.usual.within_reach) << kind.id << " " << units::file_name(entry.note);
        }
    }
}

TEST(Chart, TheReasonAgreesWithTheRanking) {
    for (const HornKind& kind : built_in_kinds()) {
        for (const ChartNote& entry : chart(kind)) {
            const bool first = possible_fingerings(kind, entry.note).front() == entry.usual;
            EXPECT_EQ(entry.because == UsualBecause::ranks_first, first)
                << kind.id << " " << units::file_name(entry.note);
        }
    }
}

TEST(Chart, WaysAreRankedByCostWithFalseTonesAfterAllOthers) {
    const auto ways = possible_fingerings(kind_of("bbb-tuba-4"), note("Eb1"));
    EXPECT_TRUE(std::ranges::is_sorted(
        ways, {}, [](const Way& way) { return std::pair(way.tone == Tone::false_tone, way.cost); }));
    EXPECT_EQ(ways.front().fingering, (Fingering{ValveSet{1, 2, 4}, 0}));
    EXPECT_EQ(ways.back().tone, Tone::false_tone);
}

/// Common practice: on three valves the notes below E1 are played as false tones, from open Eb1 down.
TEST(Chart, FalseTonesBelowTheSecondPartialAreNamedAsSuch) {
    for (const auto& [name, fingering] : {std::pair{"Eb1", "0"}, {"D1", "2"}, {"Db1", "1"}, {"C1", "12"}}) {
        const auto entry = chart_note(kind_of("bbb-tuba-3"), note(name)).value();
        EXPECT_EQ(entry.usual.tone, Tone::false_tone) << name;
        EXPECT_EQ(file_text(entry.usual.fingering), fingering) << name;
    }
    EXPECT_EQ(chart_note(kind_of("bbb-tuba-3"), note("E1")).value().usual.tone, Tone::partial);
    EXPECT_EQ(chart_note(kind_of("bbb-tuba-3"), note("Bb0")).value().usual.tone, Tone::pedal);
}

TEST(Chart, ANoteTheHornCannotSoundHasNone) {
    EXPECT_FALSE(chart_note(kind_of("bbb-tuba-3"), note("C0")));
    EXPECT_TRUE(possible_fingerings(kind_of("bbb-tuba-3"), note("C0")).empty());
}

TEST(Chart, UsualFingeringsOfTheTuba) {
    EXPECT_EQ(usual("bbb-tuba-3", "C2"), "13");
    EXPECT_EQ(usual("bbb-tuba-4", "C2"), "4") << "common practice: 4 for 1-3";
    EXPECT_EQ(usual("bbb-tuba-3", "B1"), "123");
    EXPECT_EQ(usual("bbb-tuba-4", "B1"), "24") << "common practice: 2-4 for 1-2-3";
    EXPECT_EQ(usual("bbb-tuba-3", "D3"), "0") << "the flat fifth partial is left to the player";
}

TEST(SoundingPartial, IsTheNearestOne) {
    const HornKind& tuba = kind_of("bbb-tuba-3");
    const auto found = sounding_partial(tuba, {ValveSet{1, 3}, 0}, note("C2"));
    EXPECT_EQ(found.value().partial, 3);
    EXPECT_NEAR(found.value().lean.value(), 17.5, 0.05);
    EXPECT_EQ(sounding_partial(tuba, {}, note("Ab3")).value().partial, 7);
}

TEST(SoundingPartial, AFingeringThatCannotSoundTheNoteHasNone) {
    const HornKind& tuba = kind_of("bbb-tuba-3");
    EXPECT_FALSE(sounding_partial(tuba, {}, note("C2")));
    EXPECT_FALSE(sounding_partial(tuba, {ValveSet{4}, 0}, note("C2"))) << "no such valve";
    EXPECT_FALSE(sounding_partial(tuba, {{}, 1}, note("Bb1"))) << "no hand slide";
}

}  // namespace
}  // namespace lowledger::horns
