#include "model/acoustics/tube.h"

#include <gtest/gtest.h>
#include <random>

#include "model/acoustics/air.h"
#include "model/units/refusal.h"

namespace lowledger::acoustics {
namespace {

using units::Cents;
using units::Millimetres;
using units::Pitch;

ValveSet set_of_bits(unsigned bits) {
    ValveSet down;
    for (int valve = 1; valve <= 4; ++valve) {
        if ((bits >> static_cast<unsigned>(valve - 1)) & 1U) down = down.with(valve);
    }
    return down;
}

/// A horn of four valves with loops, a main slide and one slide a valve, drawn at random.
Tube random_tube(std::mt19937& random) {
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    Tube tube;
    tube.open = Millimetres(between(2000.0, 6000.0));
    for (const double lowering : {200.0, 100.0, 300.0, 500.0})
        tube.valves.push_back(ideal_valve_tube(tube.open, Cents(lowering + between(-15.0, 15.0))));
    tube.loops.push_back({ValveSet{1, 4}, Millimetres(between(1.0, 200.0))});
    tube.slides.push_back({std::nullopt, 2.0, between(0.85, 1.15), Millimetres(between(5.0, 20.0))});
    for (int valve = 1; valve <= 4; ++valve)
        tube.slides.push_back(
            {valve, valve == 2 ? 1.0 : 2.0, between(0.85, 1.15), Millimetres(between(3.0, 15.0))});
    return tube;
}

std::vector<Millimetres> random_positions(const Tube& tube, std::mt19937& random) {
    std::vector<Millimetres> positions;
    for (std::size_t i = 0; i < tube.slides.size(); ++i)
        positions.emplace_back(std::uniform_real_distribution<double>(0.0, 60.0)(random));
    return positions;
}

/// Calls `check(tube, positions, down)` on two hundred random horns with every set of valves.
template <typename Check>
void on_random_horns(Check check) {
    std::mt19937 random(20260114);
    for (int horn = 0; horn < 200; ++horn) {
        const Tube tube = random_tube(random);
        const auto positions = random_positions(tube, random);
        for (unsigned bits = 0; bits < 16; ++bits)
            check(tube, positions, set_of_bits(bits));
    }
}

TEST(Tube, AValveNeverRaises) {
    on_random_horns([](const Tube& tube, const std::vector<Millimetres>& positions, ValveSet down) {
        for (int valve = 1; valve <= 4; ++valve) {
            if (down.contains(valve)) continue;
            EXPECT_GT(designed_length(tube, down.with(valve)), designed_length(tube, down));
        }
        EXPECT_GT(sounding_length(tube, ValveSet{1, 2, 3, 4}, positions), Millimetres(0.0));
    });
}

TEST(Tube, ALongerTubeIsLowerOnEveryPartial) {
    for (const double length : {1000.0, 2211.0, 2951.6, 3940.0, 4422.5, 5259.2, 5903.3, 9000.0}) {
        for (int n = 1; n <= 16; ++n) {
            EXPECT_LT(partial_frequency(Millimetres(length + 1.0), n),
                      partial_frequency(Millimetres(length), n));
            EXPECT_LT(lean(Millimetres(length + 1.0), n, Pitch(46)), lean(Millimetres(length), n, Pitch(46)));
        }
    }
}

TEST(Tube, AtTheDesignedPositionsSoundingAndDesignedLengthAgree) {
    on_random_horns([](const Tube& tube, const std::vector<Millimetres>&, ValveSet down) {
        std::vector<Millimetres> designed;
        for (const SlideTube& slide : tube.slides)
            designed.push_back(slide.designed);
        EXPECT_DOUBLE_EQ(sounding_length(tube, down, designed).value(), designed_length(tube, down).value());
    });
}

TEST(Tube, APullActsOnlyWhereItsValveIsDown) {
    on_random_horns([](const Tube& tube, const std::vector<Millimetres>& positions, ValveSet down) {
        const Millimetres before = sounding_length(tube, down, positions);
        for (std::size_t i = 0; i < tube.slides.size(); ++i) {
            const SlideTube& slide = tube.slides[i];
            auto pulled = positions;
            pulled[i] += Millimetres(7.0);
            const bool should_act = !slide.valve || down.contains(*slide.valve);
            EXPECT_EQ(acts(slide, down), should_act);
            const double gained = should_act ? 7.0 * slide.legs * slide.bore : 0.0;
            EXPECT_NEAR((sounding_length(tube, down, pulled) - before).value(), gained, 1e-9);
        }
    });
}

TEST(Tube, TheSlopeIsTheDerivativeOfTheLean) {
    on_random_horns([](const Tube& tube, const std::vector<Millimetres>& positions, ValveSet down) {
        constexpr double step = 1e-3;
        for (std::size_t i = 0; i < tube.slides.size(); ++i) {
            auto in = positions;
            auto out = positions;
            in[i] -= Millimetres(step);
            out[i] += Millimetres(step);
            const Cents difference = lean(sounding_length(tube, down, out), 4, Pitch(46)) -
                                     lean(sounding_length(tube, down, in), 4, Pitch(46));
            const auto slope = pull_slope(tube.slides[i], down, sounding_length(tube, down, positions));
            EXPECT_NEAR(slope.value(), difference.value() / (2.0 * step), 1e-6);
        }
    });
}

TEST(Tube, ALoopActsOnlyWithAllItsValves) {
    const Tube tube{.open = Millimetres(5000.0),
                    .valves = {Millimetres(600.0), Millimetres(300.0)},
                    .slides = {},
                    .loops = {{ValveSet{1, 2}, Millimetres(40.0)}}};
    EXPECT_EQ(designed_length(tube, {}), Millimetres(5000.0));
    EXPECT_EQ(designed_length(tube, ValveSet{1}), Millimetres(5600.0));
    EXPECT_EQ(designed_length(tube, ValveSet{2}), Millimetres(5300.0));
    EXPECT_EQ(designed_length(tube, ValveSet{1, 2}), Millimetres(5940.0));
}

TEST(Tube, AnIdealValveLowersByWhatItWasBuiltFor) {
    for (const double lowering : {100.0, 200.0, 300.0, 500.0, 262.12}) {
        const Millimetres open(5903.3);
        const Millimetres longer = open + ideal_valve_tube(open, Cents(lowering));
        EXPECT_NEAR((lean(open, 4, Pitch(46)) - lean(longer, 4, Pitch(46))).value(), lowering, 1e-9);
    }
}

TEST(Tube, ChangeAndTubeAreInverse) {
    for (const double cents : {-80.0, -31.2, -7.0, -0.1, 0.1, 7.0, 31.2, 80.0}) {
        const Millimetres extra = tube_for_change(Millimetres(4422.5), Cents(cents));
        EXPECT_NEAR(change_by_tube(Millimetres(4422.5), extra).value(), cents, 1e-9);
        EXPECT_EQ(extra > Millimetres(0.0), cents < 0.0) << "more tube, lower";
    }
}

TEST(Tube, LeanIsZeroOnItsOwnPartialAndFollowsA4) {
    const Millimetres open = open_length(units::equal_tempered(Pitch(22)));
    for (const auto& [n, midi] : {std::pair{1, 22}, {2, 34}, {4, 46}, {8, 58}, {16, 70}})
        EXPECT_NEAR(lean(open, n, Pitch(midi)).value(), 0.0, 1e-9);
    const Cents against_442 = lean(open, 4, Pitch(46), units::Hertz(442.0));
    EXPECT_NEAR(against_442.value(), -units::interval(units::Hertz(440.0), units::Hertz(442.0)).value(),
                1e-9);
}

TEST(Tube, APositionForEachSlideOrNone) {
    std::mt19937 random(1);
    const Tube tube = random_tube(random);
    EXPECT_THROW(sounding_length(tube, {}, {}), units::Refusal);
}

}  // namespace
}  // namespace lowledger::acoustics
