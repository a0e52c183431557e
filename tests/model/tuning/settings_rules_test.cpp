#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <nlopt.h>

#include "model/tuning/settings.h"
#include "tests/model/tuning/random_question.h"

namespace lowledger::tuning {
namespace {

using units::Cents;
using units::Millimetres;

/// An open BBb horn's main slide and one note on it.
SettingsQuestion one_note(Cents mean, Cents spread) {
    SettingsQuestion question;
    question.tube.open = Millimetres(5903.0);
    question.tube.slides.push_back({std::nullopt, 2.0, 1.0, Millimetres(20.0)});
    question.slides.push_back({"main", Millimetres(20.0), Millimetres(5.0), Millimetres(70.0)});
    PlayedNote way;
    way.partial = 2;
    way.mean = mean;
    way.spread = spread;
    question.notes.push_back({units::Pitch(34), 1.0, {way}});
    return question;
}

/// Roomy slides, plain squares, no cost of moving: what the physics alone says.
SettingsQuestion plain_question(unsigned seed) {
    SettingsQuestion question = random_question(seed);
    question.constants.flat_weight = 1.0;
    question.constants.cost_per_cent_moved = 0.0;
    for (QuestionSlide& slide : question.slides) {
        slide.fixed = false;
        slide.least = Millimetres(0.0);
        slide.travel = Millimetres(900.0);
        slide.now = Millimetres(400.0);
    }
    for (QuestionNote& note : question.notes)
        note.ways.resize(1);
    // A note on the open horn and on each valve alone, so that every slide's place is settled.
    const auto valves = static_cast<int>(question.tube.valves.size());
    for (int v = 0; v <= valves; ++v) {
        PlayedNote way = question.notes.front().ways.front();
        way.fingering.valves = v == 0 ? acoustics::ValveSet{} : acoustics::ValveSet{v};
        question.notes.push_back({units::Pitch(80 + v), 1.0, {way}});
    }
    return question;
}

TEST(MoveRule, ALittleSharpAndLittleKnownIsLeft) {
    const SlideSettings settings = recommend(one_note(Cents(4.0), Cents(10.0)));
    EXPECT_FALSE(settings.anything_moves());
    EXPECT_EQ(settings.slides[0].advice, Advice::leave);
    EXPECT_EQ(settings.slides[0].recommended, Millimetres(20.0));
    EXPECT_LT(settings.slides[0].chance_of_better, 0.8);
}

TEST(MoveRule, ClearlySharpIsPulledOnTheStep) {
    const SlideSettings settings = recommend(one_note(Cents(14.0), Cents(2.0)));
    ASSERT_EQ(settings.slides[0].advice, Advice::move);
    // 14 cents on 0.587 cents a mm are 24 mm; 0.5 cent less for the cost of moving; the nearest step is 25.
    EXPECT_EQ(settings.slides[0].recommended, Millimetres(45.0));
    EXPECT_GT(settings.chance_of_better, 0.99);
}

TEST(MoveRule, WithoutEnoughReadingsNothingMoves) {
    SettingsQuestion question = one_note(Cents(30.0), Cents(1.0));
    question.may_move = false;
    EXPECT_FALSE(recommend(question).anything_moves());
}

TEST(MoveRule, TheChanceOfBetterIsExactForPlainSquares) {
    // With equal squares cost after - before = 2 x d + d^2 for a change of d: better where x > -d/2.
    SettingsQuestion question = one_note(Cents(14.0), Cents(6.0));
    question.constants.flat_weight = 1.0;
    const SlideSettings settings = recommend(question);
    const Cents change = settings.notes[0].lean_after - settings.notes[0].lean_before;
    const double z = (14.0 + change.value() / 2.0) / 6.0;
    EXPECT_NEAR(settings.chance_of_better, 0.5 * std::erfc(-z / std::sqrt(2.0)), 1e-9);
}

TEST(MoveRule, HalfWidthIsTheSpreadInMillimetres) {
    const SlideSettings settings = recommend(one_note(Cents(14.0), Cents(6.0)));
    const double cents_a_mm = 1200.0 * 2.0 / (std::log(2.0) * 5903.0);
    EXPECT_NEAR(settings.slides[0].half_width->value(), 1.6449 * 6.0 / cents_a_mm, 0.01);
}

TEST(Limits, AreTold) {
    SettingsQuestion question = one_note(Cents(60.0), Cents(2.0));
    SlideSettings settings = recommend(question);
    EXPECT_EQ(settings.slides[0].recommended, Millimetres(70.0));
    EXPECT_EQ(settings.slides[0].limit, Limit::travel);
    question = one_note(Cents(-60.0), Cents(2.0));
    settings = recommend(question);
    EXPECT_EQ(settings.slides[0].recommended, Millimetres(5.0));
    EXPECT_EQ(settings.slides[0].limit, Limit::least);
}

TEST(Steps, OfAnUnknownPositionAreStepsOfTheChange) {
    SettingsQuestion question = one_note(Cents(14.0), Cents(2.0));
    question.slides[0].now = Millimetres(21.3);
    question.slides[0].position_known = false;
    const SlideSettings settings = recommend(question);
    const double change = (settings.slides[0].recommended - settings.slides[0].now).value();
    EXPECT_NEAR(std::remainder(change, 5.0), 0.0, 1e-9);
    EXPECT_GT(change, 0.0);
    EXPECT_FALSE(settings.slides[0].position_known);
}

TEST(HeldNote, ComesToItsLean) {
    for (unsigned seed = 1; seed <= 20; ++seed) {
        SettingsQuestion question = plain_question(seed);
        question.held_note = HeldNote{0, Cents(3.0)};
        EXPECT_NEAR(recommend(question).notes[0].lean_after.value(), 3.0, 0.05) << "seed " << seed;
    }
}

TEST(MeanLean, IsCappedWhereTheSlidesAllowIt) {
    SettingsQuestion question = one_note(Cents(30.0), Cents(25.0));
    question.constants.chance_of_better = 0.0;
    question.constants.step = Millimetres(0.0);
    question.constants.most_mean_sharp = Cents(1000.0);
    EXPECT_GT(recommend(question).mean_lean_after.value(), 3.0);
    question.constants.most_mean_sharp = Cents(2.0);
    EXPECT_NEAR(recommend(question).mean_lean_after.value(), 2.0, 0.01);
}

TEST(Invariance, AShiftOfAllReadingsScalesEveryTube) {
    // All notes r = 2^(s/1200) sharper: every length must grow by r, the open tube and each valve's own.
    for (unsigned seed = 1; seed <= 20; ++seed) {
        SettingsQuestion question = plain_question(seed);
        const SlideSettings before = recommend(question);
        constexpr double shift = 6.0;
        for (QuestionNote& note : question.notes)
            note.ways[0].mean += Cents(shift);
        const SlideSettings after = recommend(question);
        const double growth = std::exp2(shift / 1200.0) - 1.0;
        for (std::size_t i = 0; i < question.slides.size(); ++i) {
            const acoustics::SlideTube& slide = question.tube.slides[i];
            const double tube = slide.valve
                                    ? question.tube.valves[static_cast<std::size_t>(*slide.valve - 1)].value()
                                    : question.tube.open.value();
            const double pulled =
                slide.legs * slide.bore * (before.slides[i].recommended - slide.designed).value();
            const double expected =
                before.slides[i].recommended.value() + (tube + pulled) * growth / (slide.legs * slide.bore);
            if (before.slides[i].limit != Limit::none || after.slides[i].limit != Limit::none) continue;
            EXPECT_NEAR(after.slides[i].recommended.value(), expected, 1e-3)
                << "seed " << seed << " slide " << i;
        }
    }
}

TEST(Invariance, ScaleOfTheWeightsAndOrderOfTheNotesDoNotMatter) {
    for (unsigned seed = 1; seed <= 20; ++seed) {
        const SettingsQuestion question = random_question(seed);
        SettingsQuestion other = question;
        for (QuestionNote& note : other.notes)
            note.weight *= 7.0;
        std::ranges::reverse(other.notes);
        const SlideSettings one = recommend(question);
        const SlideSettings two = recommend(other);
        EXPECT_NEAR(one.objective_after.value(), two.objective_after.value(),
                    1e-7 * (1.0 + one.objective_after.value()));
        EXPECT_NEAR(one.chance_of_better, two.chance_of_better, 1e-6);
    }
}

struct Capped {
    PlainObjective objective;
    double most;
};

TEST(MeanLean, TheCappedOptimumIsNeverWorseThanNloptUnderTheSameConstraint) {
    for (unsigned seed = 1; seed <= 40; ++seed) {
        SettingsQuestion question = random_question(seed);
        for (QuestionNote& note : question.notes)
            note.ways.resize(1);
        question.constants.most_mean_sharp = Cents(1.0);
        const std::vector<double> ours = positions_recommended(recommend(question));
        Capped capped{PlainObjective(question), 1.0};
        // Where the slides do not go far enough there is nothing to compare.
        if (capped.objective.mean_lean(ours) > 1.01) continue;
        std::vector<double> low, high;
        for (const QuestionSlide& slide : question.slides) {
            low.push_back((slide.fixed ? slide.now : slide.least).value());
            high.push_back((slide.fixed ? slide.now : slide.travel).value());
        }
        nlopt_opt solver = nlopt_create(NLOPT_LN_COBYLA, static_cast<unsigned>(low.size()));
        nlopt_set_lower_bounds(solver, low.data());
        nlopt_set_upper_bounds(solver, high.data());
        nlopt_set_min_objective(
            solver,
            [](unsigned n, const double* at, double*, void* data) {
                return static_cast<Capped*>(data)->objective(std::vector<double>(at, at + n));
            },
            &capped);
        nlopt_add_inequality_constraint(
            solver,
            [](unsigned n, const double* at, double*, void* data) {
                const auto& it = *static_cast<Capped*>(data);
                return it.objective.mean_lean(std::vector<double>(at, at + n)) - it.most;
            },
            &capped, 1e-9);
        nlopt_set_maxeval(solver, 4000);
        nlopt_set_xtol_rel(solver, 1e-10);
        std::vector<double> at = ours;
        double theirs = INFINITY;
        nlopt_optimize(solver, at.data(), &theirs);
        nlopt_destroy(solver);
        EXPECT_LE(capped.objective(ours), theirs + 1e-6 * (1.0 + theirs)) << "seed " << seed;
    }
}

}  // namespace
}  // namespace lowledger::tuning
