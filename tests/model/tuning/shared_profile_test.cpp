#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

#include "model/tuning/predictions.h"
#include "tests/model/tuning/played_horn.h"

namespace lowledger::tuning {
namespace {

using units::Cents;
using units::Millimetres;

const ProfileNote& usual(const TuningProfile& profile, const char* name) {
    return *profile.usual(*units::parse_pitch(name));
}

/// A sheet that a player who corrects that much would leave.
studio::TuningSheet sheet_at(const TuningInputs& inputs, double kappa, int number) {
    studio::TuningSheet sheet = sheet_of(inputs, {}, 3, {"Bb2", "F2", "Eb2"});
    sheet.id.number = number;
    for (studio::Reading& reading : sheet.readings) {
        reading.cents = true_reading(inputs, {}, inputs.positions, reading.note, reading.fingering, kappa);
    }
    return sheet;
}

TEST(Correction, OnlyAKnownMoveTellsOfIt) {
    TuningInputs inputs = fresh_inputs(studio::Level::middle);
    inputs.sheets = {sheet_at(inputs, 0.6, 1)};
    const Correction one = answer(inputs).profile.correction;
    EXPECT_EQ(one.part, 0.2);
    EXPECT_EQ(one.share_of_data, 0.0);
    EXPECT_NEAR(one.spread, 0.15, 1e-12);

    inputs.positions["main"] += Millimetres(45.0);
    inputs.positions["first"] += Millimetres(35.0);
    inputs.sheets.push_back(sheet_at(inputs, 0.6, 2));
    const Correction two = answer(inputs).profile.correction;
    EXPECT_GT(two.part, 0.3);
    EXPECT_LT(two.part, 0.6);
    EXPECT_LT(two.spread, 0.15);
    EXPECT_GT(two.share_of_data, 0.2);
    EXPECT_LT(two.low, two.part);
    EXPECT_GT(two.high, two.part);

    inputs.sheets[1] = sheet_at(inputs, 0.2, 2);
    inputs.sheets[1].positions = inputs.positions;
    TuningInputs as_level = inputs;
    as_level.positions = fresh_inputs().positions;
    as_level.sheets[0] = sheet_at(as_level, 0.2, 1);
    EXPECT_NEAR(answer(as_level).profile.correction.part, 0.2, 0.02);
}

TEST(Correction, MovesTheCardsAim) {
    TuningInputs inputs = fresh_inputs(studio::Level::middle);
    TuningInputs before = inputs;
    inputs.positions["main"] += Millimetres(45.0);
    inputs.positions["first"] += Millimetres(35.0);
    const auto answered = [&](double kappa) {
        inputs.sheets = {sheet_at(before, kappa, 1), sheet_at(inputs, kappa, 2)};
        return answer(inputs);
    };
    const TuningAnswer corrects = answered(0.6);
    const TuningAnswer plain = answered(0.2);
    ASSERT_GT(corrects.profile.correction.part, plain.profile.correction.part + 0.1);
    // From flat by the pull both aims go up to the same horn in tune; who corrects is less far off now.
    EXPECT_GT(usual(corrects.profile, "Bb1").aim, usual(plain.profile, "Bb1").aim);
}

/// A beginner on the school's tuba who has another at home, and plays sharp on both.
TuningInputs with_horn_at_home() {
    TuningInputs school = fresh_inputs(studio::Level::middle);
    const TrueHorn horn{.extra_valve = {}, .player = Cents(15.0)};
    school.sheets = {sheet_of(school, horn, 2)};
    TuningInputs home = fresh_inputs(studio::Level::middle, "bbb-tuba-4");
    studio::TuningSheet sheet = sheet_of(home, horn, 2);
    sheet.id.number = 2;
    school.other_horns = {{home.kind, home.positions, {sheet}}};
    return school;
}

TEST(TwoHorns, TheOtherHornTellsOfThePlayer) {
    const TuningInputs both = with_horn_at_home();
    TuningInputs one = both;
    one.other_horns.clear();
    const TuningProfile with = answer(both).profile;
    const TuningProfile without = answer(one).profile;
    EXPECT_EQ(with.sheets_of_other_horns, 1);
    EXPECT_EQ(with.sheets_used, 1);
    EXPECT_EQ(with.takes_used, without.takes_used);
    // Sharp on both, so it is the player: the slides are left less to answer.
    EXPECT_LT(usual(with, "Bb1").slides_mean, usual(without, "Bb1").slides_mean);
    EXPECT_LT(usual(with, "Bb1").spread, usual(without, "Bb1").spread);
}

TEST(TwoHorns, WhatIsLearntOfTheOtherHornAloneIsThePlayersOnly) {
    TuningInputs inputs = with_horn_at_home();
    inputs.sheets.clear();
    const TuningProfile profile = answer(inputs).profile;
    EXPECT_EQ(profile.sheets_used, 0);
    EXPECT_GT(usual(profile, "Bb1").mean, Cents(2.0));
    // A valve tube of the horn at home is no news of the school's.
    TuningInputs longer = inputs;
    for (studio::Reading& reading : longer.other_horns[0].sheets[0].readings) {
        if (!reading.fingering.valves.empty()) reading.cents -= Cents(10.0);
    }
    const TuningProfile other = answer(longer).profile;
    EXPECT_NEAR((usual(other, "Bb1").slides_mean - usual(profile, "Bb1").slides_mean).value(), 0.0, 3.0);
}

TEST(SharedHorn, OtherPlayersTellOfTheHorn) {
    TuningInputs inputs = fresh_inputs(studio::Level::beginner);
    const TrueHorn horn{.extra_open = Millimetres(-60.0), .extra_valve = {Millimetres(-12.0)}};
    inputs.sheets = {sheet_of(inputs, horn, 1)};
    const TuningProfile alone = answer(inputs).profile;
    for (int k = 1; k <= 3; ++k) {
        TrueHorn played = horn;
        played.player = Cents(4.0 * (k - 2));
        studio::TuningSheet sheet = sheet_of(inputs, played, 2, {"Bb2", "F2"});
        sheet.id.number = 10 + k;
        inputs.other_players.push_back({studio::Level::advanced, {sheet}});
    }
    const TuningProfile shared = answer(inputs).profile;
    EXPECT_EQ(shared.sheets_of_other_players, 3);
    EXPECT_EQ(shared.sheets_used, 1);
    EXPECT_EQ(usual(shared, "Bb1").takes, 1);
    for (const char* name : {"Bb1", "Ab1", "A1"})
        EXPECT_LT(usual(shared, name).slides_spread, 0.8 * usual(alone, name).slides_spread) << name;
    const double truth =
        true_reading(inputs, horn, inputs.positions, *units::parse_pitch("Bb1"), {}, 0.0).value();
    EXPECT_LT(std::abs(usual(shared, "Bb1").slides_mean.value() - truth),
              std::abs(usual(alone, "Bb1").slides_mean.value() - truth));
}

TEST(Trombone, TheArmIsKeptApartFromTheHorn) {
    TuningInputs inputs = fresh_inputs(studio::Level::middle, "tenor-trombone");
    inputs.sheets = {sheet_of(inputs, {.extra_valve = {}}, 3, {"F3", "Bb2", "A3", "E3", "D3"})};
    const double home = usual(answer(inputs).profile, "Bb3").slides_mean.value();
    // Second position 10 mm too far in: A3 and E3 sharp alike, first in tune.
    for (studio::Reading& reading : inputs.sheets[0].readings) {
        if (reading.fingering.position == 2) reading.cents += Cents(12.0);
    }
    const TuningProfile profile = answer(inputs).profile;
    ASSERT_EQ(profile.arm.size(), 6U);
    EXPECT_LT(profile.arm[0].out, Millimetres(-2.0));
    EXPECT_GT(profile.arm[0].share_of_data, 0.3);
    EXPECT_NEAR(profile.arm[5].out.value(), 0.0, 1.0);
    EXPECT_NEAR(usual(profile, "Bb3").slides_mean.value(), home, 1.5);
    EXPECT_GT(usual(profile, "A3").mean, usual(profile, "A3").placed + Cents(3.0));
}

TEST(Warming, APitchThatRisesFromRoundToRoundIsTakenOutOfUnevenSheets) {
    TuningInputs inputs = fresh_inputs(studio::Level::advanced);
    inputs.sheets = {sheet_of(inputs, {.extra_valve = {}}, 4, {"Bb2", "F2", "Eb2"})};
    const Cents flat_start = usual(answer(inputs).profile, "Bb1").mean;
    auto& readings = inputs.sheets[0].readings;
    for (studio::Reading& reading : readings)
        reading.cents += Cents(2.0 * (reading.take - 4));
    // What was only played at first was not flat.
    const units::Pitch bb1 = *units::parse_pitch("Bb1");
    std::erase_if(readings, [&](const studio::Reading& r) { return r.note == bb1 && r.take > 1; });
    const Cents warmed = usual(answer(inputs).profile, "Bb1").mean;
    EXPECT_NEAR((warmed - flat_start).value(), 0.0, 2.5);
}

/// One reading's covariance with itself, from the figures by hand.
TEST(Terms, AreThoseOfTheFigures) {
    const TuningInputs inputs = [] {
        TuningInputs fresh = fresh_inputs(studio::Level::middle);
        fresh.positions["first"] += Millimetres(15.0);
        fresh.sheets = {sheet_of(fresh, {}, 1)};
        fresh.sheets[0].room.reset();
        return fresh;
    }();
    const Evidence evidence = evidence_of(inputs, figures());
    const auto note = std::ranges::find_if(evidence.notes, [](const MeasuredNote& n) {
        return n.playing.fingering.valves == acoustics::ValveSet{1};
    });
    ASSERT_NE(note, evidence.notes.end());
    const double kappa = 0.2;
    const double length = 5903.3 * std::exp2(200.0 / 1200.0) + 30.0;
    const double cents_a_mm = 1200.0 / std::log(2.0) * 2.0 / length;
    const double octaves = (note->playing.note - inputs.kind.band_note).count / 12.0;
    const double own = 5903.3 * (std::exp2(200.0 / 1200.0)) / length;
    // overall, valve 1, horn by partial, kind by partial, by set and partial, mouthpiece
    const double horn = 64.0 + 25.0 * own * own + 25.0 + 25.0 + 9.0 + 16.0;
    const double bore = std::pow(0.08 * cents_a_mm * 15.0, 2.0);
    // Main and first slide, each measured to 1 mm.
    const double places = 2.0 * cents_a_mm * cents_a_mm;
    const double player = 49.0 + 25.0 * octaves * octaves + 25.0 + 9.0;
    const double room = std::pow(2.0 * 0.75 * 600.0 / std::log(2.0) / 294.15, 2.0);
    const double sitting = 25.0 + 4.0;
    const double expected = std::pow(1.0 - kappa, 2.0) * (horn + bore + places) + player + room + sitting;
    EXPECT_NEAR(shared_variance(note->terms, note->terms, 0), expected, 0.02);
    EXPECT_NEAR(note->noise.value(), 9.0 + 25.0, 1e-12);
    // Half of the player is left after half a life.
    EXPECT_NEAR(shared_variance(note->terms, note->terms, 120), expected - 0.5 * player, 0.02);
}

}  // namespace
}  // namespace lowledger::tuning
