#include "model/tuning/certificate.h"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "tests/model/tuning/random_question.h"

namespace lowledger::tuning {
namespace {

constexpr unsigned horns = 120;

/// Closed, and nothing lower found.
void expect_closed(const SettingsQuestion& question) {
    const SlideSettings settings = recommend(question);
    const Certificate certificate = certify(question, settings);
    EXPECT_TRUE(certificate.closed) << "gap " << certificate.gap.value() << " of "
                                    << settings.objective_after.value() << " after " << certificate.boxes;
    EXPECT_TRUE(certificate.better.empty());
    EXPECT_GE(certificate.gap.value(), 0.0);
}

TEST(Certificate, ClosesTheGapOfTheSearch) {
    for (unsigned seed = 0; seed < horns; ++seed) {
        SCOPED_TRACE(seed);
        expect_closed(random_question(seed));
    }
}

TEST(Certificate, ClosesItOnSteps) {
    for (unsigned seed = 0; seed < horns; ++seed) {
        SCOPED_TRACE(seed);
        for (const double step : {5.0, 2.0, 25.4 / 16.0}) {
            SettingsQuestion question = random_question(seed);
            question.constants.step = units::Millimetres(step);
            expect_closed(question);
        }
    }
}

TEST(Certificate, NoPositionsLieBelowTheBound) {
    std::mt19937_64 random(7);
    std::uniform_real_distribution<double> part(0.0, 1.0);
    for (unsigned seed = 0; seed < horns; ++seed) {
        const SettingsQuestion question = random_question(seed);
        const PlainObjective objective(question);
        const double bound = certify(question, recommend(question)).bound.value();
        for (int k = 0; k < 300; ++k) {
            std::vector<double> at;
            for (const QuestionSlide& slide : question.slides) {
                const double low = slide.fixed ? slide.now.value() : slide.least.value();
                const double high = slide.fixed ? slide.now.value() : slide.travel.value();
                at.push_back(low + part(random) * (high - low));
            }
            EXPECT_GE(objective(at), bound) << seed;
        }
    }
}

TEST(Certificate, SettingsThatAreNotTheOptimumAreFoundOut) {
    int found_out = 0;
    for (unsigned seed = 0; seed < horns; ++seed) {
        const SettingsQuestion question = random_question(seed);
        const SlideSettings best = recommend(question);
        SlideSettings off = best;
        auto& slide = off.slides.front();
        const double other = slide.recommended.value() > 12.0 ? -4.0 : 4.0;
        slide.recommended += units::Millimetres(other);
        const double loss =
            PlainObjective(question)(positions_recommended(off)) - best.objective_after.value();
        if (question.slides.front().fixed || loss < 1.0) continue;
        const Certificate certificate = certify(question, off);
        EXPECT_FALSE(certificate.closed) << seed;
        EXPECT_GE(certificate.gap.value(), loss * 0.999) << seed;
        EXPECT_FALSE(certificate.better.empty()) << seed;
        ++found_out;
    }
    EXPECT_GT(found_out, static_cast<int>(horns) / 4);
}

TEST(Certificate, AStopLeavesAGapThatHolds) {
    for (unsigned seed = 0; seed < horns; ++seed) {
        const SettingsQuestion question = random_question(seed);
        const SlideSettings settings = recommend(question);
        std::stop_source stop;
        stop.request_stop();
        const Certificate at_once = certify(question, settings, stop.get_token());
        EXPECT_EQ(at_once.boxes, 1U);
        EXPECT_LE(at_once.bound.value(), settings.objective_after.value());
        EXPECT_LE(at_once.bound.value(), certify(question, settings).bound.value() + 1e-9);
    }
}

TEST(Certificate, TheSameQuestionIsCertifiedTheSame) {
    const SettingsQuestion question = random_question(3);
    const SlideSettings settings = recommend(question);
    EXPECT_EQ(certify(question, settings), certify(question, settings));
}

}  // namespace
}  // namespace lowledger::tuning
