#include "model/horns/hand_slide.h"

#include <gtest/gtest.h>

#include "model/horns/chart.h"

namespace lowledger::horns {
namespace {

using acoustics::ValveSet;
using units::Cents;
using units::Millimetres;

const HornKind& kind_of(std::string_view id) {
    const HornKind* kind = find_kind(built_in_kinds(), id);
    if (kind == nullptr) throw std::runtime_error("no kind " + std::string(id));
    return *kind;
}

TEST(HandSlide, AHornWithoutOneStaysWhereItIs) {
    const HornKind& kind = kind_of("bbb-tuba-3");
    EXPECT_EQ(plain_position(kind, {}), Millimetres(0.0));
    EXPECT_TRUE(slide_places(kind, {}).empty());
    EXPECT_TRUE(within_reach(kind, {}, Cents(50.0)));
}

TEST(HandSlide, EachPositionLowersByASemitoneWithAnyValves) {
    for (const HornKind& kind : built_in_kinds()) {
        if (!kind.hand_slide) continue;
        for (const ValveSet valves : {ValveSet{}, ValveSet{1}, ValveSet{2}, ValveSet{1, 2}}) {
            if (!kind.allows({valves, 1})) continue;
            for (int position = 2; position <= last_position; ++position) {
                const double ratio =
                    designed_length(kind, {valves, position}) / designed_length(kind, {valves, position - 1});
                EXPECT_NEAR(units::interval_of_ratio(ratio).value(), 100.0, 1e-9) << kind.id;
            }
        }
    }
}

TEST(HandSlide, WithAValvePositionsLieFurtherApart) {
    const HornKind& kind = kind_of("tenor-trombone-f");
    const auto plain = slide_places(kind, {});
    const auto with_f = slide_places(kind, ValveSet{1});
    for (std::size_t i = 1; i < plain.size(); ++i)
        EXPECT_GT(with_f[i].out, plain[i].out);
}

TEST(HandSlide, LowCWithTheFValveIsPastTheEnd) {
    const HornKind& kind = kind_of("tenor-trombone-f");
    EXPECT_TRUE(slide_places(kind, {}).back().within_reach) << "seventh is on the slide";
    const auto with_f = slide_places(kind, ValveSet{1});
    EXPECT_TRUE(with_f[4].within_reach);
    EXPECT_FALSE(with_f[5].within_reach);
    const auto low_c = chart_note(kind, units::parse_pitch("C2").value()).value();
    EXPECT_EQ(low_c.usual.fingering, (Fingering{ValveSet{1}, 6}));
    EXPECT_FALSE(low_c.usual.within_reach);
}

TEST(HandSlide, AnOffsetBringsTheNoteInTune) {
    const HornKind& kind = kind_of("tenor-trombone-f");
    for (const Fingering& fingering : {Fingering{{}, 3}, Fingering{ValveSet{1}, 2}}) {
        for (const double lean : {-31.0, -13.7, 0.0, 2.0, 15.0}) {
            const Millimetres length = designed_length(kind, fingering);
            const Millimetres moved = length + 2.0 * slide_offset(kind, fingering, Cents(lean));
            EXPECT_NEAR(-units::interval_of_ratio(moved / length).value(), -lean, 1e-9);
        }
        EXPECT_LT(slide_offset(kind, fingering, Cents(-10.0)), Millimetres(0.0)) << "flat: in";
    }
}

TEST(HandSlide, GoingOutLowersByWhatTheOffsetIsFor) {
    for (const HornKind& kind : built_in_kinds()) {
        for (int position = 1; position <= (kind.hand_slide ? last_position : 0); ++position) {
            const Fingering fingering{{}, position};
            for (const double lean : {-31.0, 2.0, 15.0}) {
                const Millimetres offset = slide_offset(kind, fingering, Cents(lean));
                EXPECT_NEAR(change_by_hand_slide(kind, fingering, offset).value(), -lean, 1e-9) << kind.id;
            }
        }
    }
    EXPECT_EQ(change_by_hand_slide(kind_of("bbb-tuba-3"), {}, Millimetres(10.0)), Cents(0.0));
}

TEST(HandSlide, SeventhIsOnEverySlide) {
    for (const HornKind& kind : built_in_kinds()) {
        if (!kind.hand_slide || kind.fundamental < units::parse_pitch("G1")) continue;
        EXPECT_TRUE(slide_places(kind, {}).back().within_reach) << kind.id;
    }
}

/// The slide of the F valve would have to go this far for a horn in E, more than its travel on most; and low
/// B lies past the end of the hand slide even then.
TEST(HandSlide, LowBNeedsMoreThanTheFValveInE) {
    HornKind kind = kind_of("tenor-trombone-f");
    const Millimetres in_f = designed_length(kind, {ValveSet{1}, 1});
    kind.valves[0].built_for = Cents(600.0);
    const Millimetres in_e = designed_length(kind, {ValveSet{1}, 1});
    EXPECT_NEAR(((in_e - in_f) / 2.0).value(), 117.1, 0.1);
    const auto low_b = chart_note(kind, units::parse_pitch("B1").value()).value();
    EXPECT_EQ(low_b.usual.fingering, (Fingering{ValveSet{1}, 6}));
    EXPECT_FALSE(low_b.usual.within_reach);
    EXPECT_NEAR(plain_position(kind, low_b.usual.fingering).value(), 699.0, 1.0);
}

TEST(HandSlide, ADependentValveNeedsTheFirst) {
    const HornKind& dependent = kind_of("bass-trombone-dependent");
    EXPECT_FALSE(dependent.allows({ValveSet{2}, 1}));
    EXPECT_TRUE(dependent.allows({ValveSet{1, 2}, 1}));
    const HornKind& independent = kind_of("bass-trombone-gb");
    EXPECT_TRUE(independent.allows({ValveSet{2}, 1}));
    EXPECT_TRUE(independent.allows({ValveSet{1, 2}, 1}));
    for (const auto& note : chart(dependent)) {
        for (const Way& way : note.alternates)
            EXPECT_NE(way.fingering.valves, ValveSet{2}) << units::file_name(note.note);
    }
}

}  // namespace
}  // namespace lowledger::horns
