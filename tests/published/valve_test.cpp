#include <array>
#include <cmath>
#include <gtest/gtest.h>

#include "model/acoustics/tube.h"
#include "model/units/hertz.h"
#include "tests/published/table.h"

namespace lowledger::published {
namespace {

using acoustics::Tube;
using acoustics::ValveSet;
using units::Cents;
using units::Millimetres;

constexpr double open_mm = 1000.0;

enum class Third { three_semitones, major_third_with_second };

/// Ideal valves 1, 2, 3, 4 of a horn, without loops.
Tube plain(Third third) {
    Tube tube{.open = Millimetres(open_mm), .valves = {}, .slides = {}, .loops = {}};
    for (const double lowering : {200.0, 100.0, 300.0, 500.0})
        tube.valves.push_back(acoustics::ideal_valve_tube(tube.open, Cents(lowering)));
    if (third == Third::major_third_with_second) {
        tube.valves[2] = acoustics::ideal_valve_tube(tube.open, Cents(400.0)) - tube.valves[1];
    }
    return tube;
}

/// The same with ideal loops that act with valve `through`.
Tube compensating(Third third, int through) {
    Tube tube = plain(third);
    const double share = tube.valves.at(static_cast<std::size_t>(through) - 1) / tube.open;
    for (int valve = 1; valve < through; ++valve)
        tube.loops.push_back(
            {ValveSet{valve, through}, tube.valves.at(static_cast<std::size_t>(valve) - 1) * share});
    return tube;
}

double lowering(const Tube& tube, ValveSet down) {
    return units::interval_of_ratio(acoustics::designed_length(tube, down) / tube.open).value();
}

double sharp(const Tube& tube, ValveSet down, int semitones) {
    return 100.0 * semitones - lowering(tube, down);
}

/// Derived from 1200 log2(1 + sum of tube fractions); common practice: several valves together are sharp.
TEST(PublishedValves, CombinationsAgainstEqualTemperament) {
    const auto ideal = plain(Third::three_semitones);
    const auto long_third = plain(Third::major_third_with_second);
    for (const Row& row : table("valve_combinations.csv")) {
        const auto down = ValveSet::parse(row.text("valves")).value();
        const int semitones = row.integer("semitones");
        EXPECT_NEAR(acoustics::designed_length(ideal, down).value() / open_mm - 1.0,
                    row.number("extra_tube_fraction_ideal"), 5e-7)
            << row.place();
        EXPECT_NEAR(sharp(ideal, down, semitones), row.number("sharp_cents_ideal_v3_is_3st"), 1e-3)
            << row.place();
        EXPECT_NEAR(sharp(long_third, down, semitones), row.number("sharp_cents_v3_tuned_so_23_is_4st"), 1e-3)
            << row.place();
        EXPECT_NEAR(sharp(compensating(Third::three_semitones, 4), down, semitones),
                    row.number("sharp_cents_4valve_compensating_ideal"), 1e-3)
            << row.place();
        EXPECT_NEAR(sharp(compensating(Third::major_third_with_second, 4), down, semitones),
                    row.number("sharp_cents_4valve_compensating_v3_tuned"), 1e-3)
            << row.place();
        if (row.text("sharp_cents_3valve_compensating").empty()) continue;
        EXPECT_NEAR(sharp(compensating(Third::three_semitones, 3), down, semitones),
                    row.number("sharp_cents_3valve_compensating"), 1e-3)
            << row.place();
    }
}

/// Derived: the third valve tuned so that 2-3 is a major third is .200458 of the length and 316.30 cents
/// alone.
TEST(PublishedValves, AThirdValveSetByTwoThree) {
    const auto tube = plain(Third::major_third_with_second);
    EXPECT_NEAR(tube.valves[2].value() / open_mm, 0.200458, 5e-7);
    EXPECT_NEAR(lowering(tube, ValveSet{3}), 316.302, 5e-4);
}

/// James Madison University brass pedagogy, "Why the math doesn't add up" (2016): a horn of 100 units with
/// steps of 6 %, valve tubes 6, 12.36 and 19.1; shortfalls 0.74, 1.15, 2.37, 4.4 units for 12, 23, 13, 123.
TEST(PublishedValves, ShortfallsOnAHundredUnits) {
    const double step = 1.06;
    Tube tube{.open = Millimetres(100.0), .valves = {}, .slides = {}, .loops = {}};
    for (const double mm : {12.36, 6.0, 19.1016})
        tube.valves.emplace_back(mm);
    const auto shortfall = [&](ValveSet down, int semitones) {
        return 100.0 * std::pow(step, semitones) - acoustics::designed_length(tube, down).value();
    };
    EXPECT_NEAR(shortfall(ValveSet{1, 2}, 3), 0.74, 5e-3);
    EXPECT_NEAR(shortfall(ValveSet{2, 3}, 4), 1.15, 5e-3);
    EXPECT_NEAR(shortfall(ValveSet{1, 3}, 5), 2.37, 1e-2);
    EXPECT_NEAR(shortfall(ValveSet{1, 2, 3}, 6), 4.4, 1e-2);
}

/// HyperPhysics, trumpet lengths in cm (by way of a University of Alaska page, 2015): open 148,
/// valves 17.9, 8.6, 27.8. Built for 200, 100 and 300 cents, they are so within three cents.
TEST(PublishedValves, ATrumpetsTubes) {
    Tube tube{.open = Millimetres(1480.0), .valves = {}, .slides = {}, .loops = {}};
    for (const double mm : {179.0, 86.0, 278.0})
        tube.valves.emplace_back(mm);
    EXPECT_NEAR(lowering(tube, ValveSet{1}), 197.66, 5e-3);
    EXPECT_NEAR(lowering(tube, ValveSet{2}), 97.78, 5e-3);
    EXPECT_NEAR(lowering(tube, ValveSet{3}), 298.01, 5e-3);
}

/// T. Moore, Acoustics Today, Winter 2016, p. 38: a semitone adds 5.95 %, a whole tone 12.25 %; on a trumpet
/// of 140 cm 8.3 and 17.2 cm (12.25 % of 140 cm is 17.15, rounded up there).
TEST(PublishedValves, SemitoneAndWholeToneOfATrumpet) {
    const Millimetres open(1400.0);
    EXPECT_NEAR(acoustics::ideal_valve_tube(open, Cents(100.0)) / open, 0.0595, 5e-5);
    EXPECT_NEAR(acoustics::ideal_valve_tube(open, Cents(200.0)) / open, 0.1225, 5e-5);
    EXPECT_NEAR(acoustics::ideal_valve_tube(open, Cents(100.0)).value(), 83.0, 0.5);
    EXPECT_NEAR(acoustics::ideal_valve_tube(open, Cents(200.0)).value(), 172.0, 0.6);
}

/// Blaikley's principle (patent of 1878), derived: with ideal loops the length is (1 + v4)(1 + sum), so any
/// set errs with the fourth as it does without it.
TEST(PublishedValves, CompensationKeepsTheErrorOfTheSetWithoutTheFourth) {
    for (const Third third : {Third::three_semitones, Third::major_third_with_second}) {
        const auto tube = compensating(third, 4);
        for (const char* set : {"1", "2", "3", "12", "13", "23", "123"}) {
            const auto down = ValveSet::parse(set).value();
            EXPECT_NEAR(lowering(tube, down.with(4)), lowering(tube, down) + 500.0, 1e-9) << set;
        }
    }
}

/// Leans with no valve and with valves 1, 2 and 3 alone.
using Setting = std::array<double, 4>;

/// The worst |lean| of the seven combinations of a three-valve compensating horn with ideal loops, set so.
double worst_lean(const Setting& setting) {
    Tube tube{.open = Millimetres(open_mm), .valves = {}, .slides = {}, .loops = {}};
    const double open = setting[0];
    for (const auto& [built_for, lean] :
         {std::pair{200.0, setting[1]}, {100.0, setting[2]}, {300.0, setting[3]}})
        tube.valves.push_back(acoustics::ideal_valve_tube(tube.open, Cents(built_for + open - lean)));
    for (const int valve : {1, 2}) {
        const auto index = static_cast<std::size_t>(valve) - 1;
        tube.loops.push_back({ValveSet{valve, 3}, tube.valves[index] * (tube.valves[2] / tube.open)});
    }
    const std::pair<ValveSet, int> combinations[] = {{{}, 0},     {{2}, 1},    {{1}, 2},      {{1, 2}, 3},
                                                     {{2, 3}, 4}, {{1, 3}, 5}, {{1, 2, 3}, 6}};
    double worst = 0.0;
    for (const auto& [down, semitones] : combinations)
        worst = std::max(worst, std::abs(open + sharp(tube, down, semitones)));
    return worst;
}

/// The best of the settings `steps` steps either way of `around` in each direction.
Setting best_near(const Setting& around, double step, int steps) {
    Setting best = around;
    const auto at = [&](std::size_t i, int k) { return around[i] + k * step; };
    for (int a = -steps; a <= steps; ++a) {
        for (int b = -steps; b <= steps; ++b) {
            for (int c = -steps; c <= steps; ++c) {
                for (int d = -steps; d <= steps; ++d) {
                    const Setting trial{at(0, a), at(1, b), at(2, c), at(3, d)};
                    if (worst_lean(trial) < worst_lean(best)) best = trial;
                }
            }
        }
    }
    return best;
}

/// R. W. Young, "Optimization of valve tube lengths for brass instruments" (abstract): the best three-valve
/// system is a compensating euphonium, open three cents sharp and valves 1 and 2 three flat, under three
/// cents on combinations. Here the least worst lean over the open horn and the three valves is searched.
TEST(PublishedValves, TheBestThreeValveCompensatingHornStandsWithinThreeCents) {
    Setting best{};
    for (const double step : {1.0, 0.25, 0.0625})
        best = best_near(best, step, 4);
    EXPECT_LT(worst_lean(best), 3.0);
    EXPECT_GT(worst_lean({}), 10.0) << "as built, without the search";
    EXPECT_NEAR(best[0], 3.0, 0.5) << "open";
    EXPECT_NEAR(best[1], -3.0, 0.5) << "first";
    EXPECT_NEAR(best[2], -3.0, 0.5) << "second";
}

/// Derived: a fifth valve that makes seven semitones with the fourth is .163467 of the length and 262.12
/// cents alone, a long whole step; with the second too it is 32.6 cents sharp of eight. A sixth that makes
/// six semitones with the fourth is .079374 and 132.23 cents, a long half step.
TEST(PublishedValves, FifthAndSixthValve) {
    auto tube = plain(Third::three_semitones);
    tube.valves.push_back(acoustics::ideal_valve_tube(tube.open, Cents(700.0)) - tube.valves[3]);
    tube.valves.push_back(acoustics::ideal_valve_tube(tube.open, Cents(600.0)) - tube.valves[3]);
    EXPECT_NEAR(tube.valves[4].value() / open_mm, 0.163467, 5e-7);
    EXPECT_NEAR(lowering(tube, ValveSet{5}), 262.12, 5e-3);
    EXPECT_NEAR(sharp(tube, ValveSet{2, 4, 5}, 8), 32.6, 5e-2);
    EXPECT_NEAR(tube.valves[5].value() / open_mm, 0.079374, 5e-7);
    EXPECT_NEAR(lowering(tube, ValveSet{6}), 132.23, 5e-3);
}

/// Derived: the best three sets of five valves for each number of semitones.
TEST(PublishedValves, BestFitsOfFiveValves) {
    auto tube = plain(Third::three_semitones);
    tube.valves.push_back(acoustics::ideal_valve_tube(tube.open, Cents(700.0)) - tube.valves[3]);
    for (const Row& row : table("five_valve_best_fit.csv")) {
        for (const auto& [set, cents] :
             {std::pair{"best", "sharp_cents"}, {"second", "sharp_cents2"}, {"third", "sharp_cents3"}}) {
            const auto down = ValveSet::parse(row.text(set)).value();
            EXPECT_NEAR(sharp(tube, down, row.integer("semitones_down")), row.number(cents), 5.1e-2)
                << row.place() << " " << set;
        }
    }
}

}  // namespace
}  // namespace lowledger::published
