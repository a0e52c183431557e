#include "model/tuning/warnings.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "model/tuning/suspicion.h"
#include "tests/model/tuning/drawn_readings.h"
#include "tests/model/tuning/played_horn.h"

namespace lowledger::tuning {
namespace {

using units::Cents;
using units::Millimetres;

constexpr int few_worlds = 60;

constexpr std::array levels{studio::Level::beginner, studio::Level::middle, studio::Level::advanced};

Warnings warnings(const TuningInputs& inputs) {
    return warnings_of(inputs, figures(), 0.0);
}

const MoveCheck* told_move(const Warnings& warnings) {
    for (const MoveCheck& check : warnings.moves) {
        if (check.told) return &check;
    }
    return nullptr;
}

bool any(const Warnings& warnings) {
    return !warnings.takes.empty() || !warnings.other_horn.empty() || told_move(warnings) != nullptr;
}

/// Of so many worlds, a share.
template <typename Counts>
double share_of(int worlds, const Counts& counts) {
    int counted = 0;
    for (int world = 1; world <= worlds; ++world)
        counted += counts(static_cast<unsigned>(world)) ? 1 : 0;
    return static_cast<double>(counted) / worlds;
}

TEST(Warnings, AtMostOneFalseAlarmInAHundredAnswers) {
    constexpr int worlds = 5 * few_worlds;
    for (const studio::Level level : levels) {
        const double alarms = share_of(worlds, [&](unsigned seed) {
            TuningInputs inputs = before_and_after(level);
            Drawing(seed).fill(inputs);
            return any(warnings(inputs));
        });
        // 1 % and three standard deviations of so many worlds.
        EXPECT_LE(alarms, 0.01 + 3.0 * std::sqrt(0.01 * 0.99 / worlds));
    }
}

TEST(Warnings, AScoreIsNormalAndAnErrorShiftsItAsTheoryHasIt) {
    TuningInputs inputs = before_and_after(studio::Level::middle);
    const Evidence evidence = evidence_of(inputs, figures());
    std::vector<Row> rows = rows_of(evidence);
    const Eigen::LLT<Eigen::MatrixXd> factor(covariance_of(rows));
    std::mt19937 random(7);
    std::normal_distribution<double> normal(0.0, 1.0);
    Eigen::VectorXd j = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(rows.size()));
    j[2] = 1.0;
    j[5] = -0.5;
    double sum = 0.0;
    double squares = 0.0;
    double shift = 0.0;
    constexpr int worlds = 2000;
    constexpr double error = 12.0;
    for (int k = 0; k < worlds; ++k) {
        Eigen::VectorXd drawn(j.size());
        for (Eigen::Index i = 0; i < drawn.size(); ++i)
            drawn[i] = normal(random);
        drawn = factor.matrixL() * drawn + error * j;
        for (std::size_t i = 0; i < rows.size(); ++i)
            rows[i].off = drawn[static_cast<Eigen::Index>(i)];
        const Conditioning conditioning(rows, inputs.today);
        const Score found = score({evidence, rows, conditioning, conditioning.inverse()}, j);
        shift = error / found.spread;
        sum += found.z - shift;
        squares += (found.z - shift) * (found.z - shift);
    }
    EXPECT_GT(shift, 1.0);
    EXPECT_NEAR(sum / worlds, 0.0, 0.07);
    EXPECT_NEAR(squares / worlds, 1.0, 0.1);
}

TEST(Warnings, ATakeFarOffIsTold) {
    for (const studio::Level level : levels) {
        const double error = 7.0 * figures().of(level).take.value();
        const double told = share_of(few_worlds, [&](unsigned seed) {
            TuningInputs inputs = before_and_after(level);
            Drawing(seed).fill(inputs);
            studio::Reading& reading = inputs.sheets[1].readings[2];
            reading.cents += Cents(error);
            const auto takes = warnings(inputs).takes;
            return takes.size() == 1 && takes[0].note == reading.note && takes[0].take == reading.take &&
                   takes[0].sheet.number == 2;
        });
        EXPECT_GE(told, 0.85);
    }
}

/// Share of worlds where what happened is told as such.
double told_as(studio::Level level, const std::map<std::string, double>& stood_off, MoveKind what,
               const std::string& slide, double* told_at_all = nullptr) {
    int at_all = 0;
    const double right = share_of(few_worlds, [&](unsigned seed) {
        TuningInputs inputs = before_and_after(level, Millimetres(35.0), Millimetres(25.0));
        auto stood = inputs.sheets[1].positions;
        for (const auto& [id, off] : stood_off)
            stood[id] += Millimetres(off);
        Drawing(seed).fill(inputs, 1, stood);
        const Warnings found = warnings(inputs);
        const MoveCheck* check = told_move(found);
        at_all += check != nullptr ? 1 : 0;
        return check != nullptr && check->likeliest.what == what &&
               (check->likeliest.slide == slide || slide.empty());
    });
    if (told_at_all != nullptr) *told_at_all = static_cast<double>(at_all) / few_worlds;
    return right;
}

TEST(Warnings, WhatHappenedToTheSlidesIsTold) {
    for (const studio::Level level : levels) {
        double nothing = 0.0;
        double wrong_way = 0.0;
        double other = 0.0;
        const double nothing_right =
            told_as(level, {{"main", -35.0}, {"first", -25.0}}, MoveKind::nothing_moved, "", &nothing);
        const double wrong_right =
            told_as(level, {{"main", -70.0}, {"first", -50.0}}, MoveKind::wrong_way, "", &wrong_way);
        const double other_right =
            told_as(level, {{"first", -25.0}, {"third", 25.0}}, MoveKind::another_slide, "first", &other);
        EXPECT_GE(wrong_way, 0.6);
        EXPECT_GE(wrong_right, 0.9 * wrong_way);
        if (level != studio::Level::advanced) continue;
        EXPECT_GE(nothing, 0.1);
        EXPECT_GE(nothing_right, 0.5 * nothing);
        EXPECT_GE(other, 0.2);
        EXPECT_GE(other_right, 0.8 * other);
    }
}

TEST(Warnings, AFirstSheetTellsNothingOfItsPlaces) {
    TuningInputs inputs = fresh_inputs(studio::Level::advanced);
    inputs.sheets = {sheet_of(inputs, {}, 3, {"Bb2", "F2", "Eb2"})};
    auto stood = inputs.sheets[0].positions;
    stood["first"] += Millimetres(25.0);
    Drawing(3).fill(inputs, 0, stood);
    const Warnings found = warnings(inputs);
    EXPECT_TRUE(found.moves.empty());
    EXPECT_TRUE(found.other_horn.empty());
}

}  // namespace
}  // namespace lowledger::tuning
