#include "model/tuning/shared_horn.h"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "model/units/refusal.h"
#include "tests/model/tuning/random_question.h"

namespace lowledger::tuning {
namespace {

using units::Cents;

/// The same horn in the hands of a player who plays everything by so much sharper, some notes more.
SettingsQuestion other_player(SettingsQuestion question, double sharper) {
    int k = 0;
    for (QuestionNote& note : question.notes) {
        const double more = 3.0 * std::sin(static_cast<double>(++k));
        for (PlayedNote& way : note.ways)
            way.mean += Cents(sharper + more);
    }
    return question;
}

TEST(SharedHorn, OneAloneIsThePlainOptimum) {
    for (unsigned seed = 1; seed <= 30; ++seed) {
        const SettingsQuestion question = random_question(seed);
        const double alone = recommend(question).objective_after.value();
        EXPECT_NEAR(share({question}).objective_after.value(), alone, 1e-6 * (1.0 + alone)) << seed;
    }
}

TEST(SharedHorn, TwoWhoPlayAlikeDoAsWellAsOne) {
    for (unsigned seed = 1; seed <= 10; ++seed) {
        SettingsQuestion question = random_question(seed);
        for (QuestionNote& note : question.notes)
            note.ways.resize(1);
        const SharedSettings settings = share({question, question});
        const double alone = recommend(question).objective_after.value();
        EXPECT_NEAR(settings.objective_after.value(), alone, 1e-6 * (1.0 + alone)) << seed;
    }
}

TEST(SharedHorn, NothingLiesBelowTheJointOptimum) {
    std::mt19937 random(5);
    for (unsigned seed = 1; seed <= 25; ++seed) {
        const SettingsQuestion one = random_question(seed);
        const SettingsQuestion two = other_player(one, 9.0);
        const SharedSettings settings = share({one, two});
        const PlainObjective first(one);
        const PlainObjective second(two);
        for (int point = 0; point < 400; ++point) {
            std::vector<double> at_one;
            std::vector<double> at_two;
            for (std::size_t i = 0; i < one.slides.size(); ++i) {
                const QuestionSlide& slide = one.slides[i];
                const auto anywhere = [&](double best) {
                    if (slide.fixed) return slide.now.value();
                    const double part = static_cast<double>(random()) / 4294967296.0;
                    const double wide = slide.least.value() + part * (slide.travel - slide.least).value();
                    return point % 2 == 0 ? wide : best + 0.05 * (wide - best);
                };
                at_one.push_back(anywhere(settings.slides[i].recommended.front().value()));
                at_two.push_back(one.tube.slides[i].valve
                                     ? at_one.back()
                                     : anywhere(settings.slides[i].recommended.back().value()));
            }
            EXPECT_GE(0.5 * (first(at_one) + second(at_two)), settings.objective_after.value() * (1.0 - 1e-9))
                << "seed " << seed;
        }
    }
}

TEST(SharedHorn, ASharperPlayerPullsTheMainSlideFurther) {
    SettingsQuestion one = random_question(2);
    for (QuestionNote& note : one.notes)
        note.ways.resize(1);
    for (QuestionSlide& slide : one.slides) {
        slide.fixed = false;
        slide.least = units::Millimetres(0.0);
        slide.travel = units::Millimetres(500.0);
        slide.now = units::Millimetres(250.0);
    }
    const SharedSettings settings = share({one, other_player(one, 10.0)});
    for (std::size_t i = 0; i < settings.slides.size(); ++i) {
        const SharedSlide& slide = settings.slides[i];
        if (one.tube.slides[i].valve) {
            EXPECT_EQ(slide.recommended.size(), 1U);
        } else {
            ASSERT_EQ(slide.recommended.size(), 2U);
            EXPECT_GT(slide.recommended[1], slide.recommended[0]);
        }
    }
}

TEST(SharedHorn, RefusesWhatIsNotOneHorn) {
    const SettingsQuestion one = random_question(1);
    EXPECT_THROW(share({}), units::Refusal);
    SettingsQuestion other = one;
    other.tube.open += units::Millimetres(1.0);
    EXPECT_THROW(share({one, other}), units::Refusal);
    other = one;
    other.held_note = HeldNote{0, Cents(0.0)};
    EXPECT_THROW(share({one, other}), units::Refusal);
    other = one;
    other.slides.front().now += units::Millimetres(0.5);
    other.slides.front().travel += units::Millimetres(0.5);
    EXPECT_THROW(share({one, other}), units::Refusal);
}

}  // namespace
}  // namespace lowledger::tuning
