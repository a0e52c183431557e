#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <limits>

#include "model/units/refusal.h"
#include "tests/model/tuning/played_horn.h"

namespace lowledger::tuning {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using units::Millimetres;

std::string refusal(const TuningInputs& inputs) {
    try {
        answer(inputs);
    } catch (const units::Refusal& refusal) {
        return refusal.what();
    }
    return "not refused";
}

TuningInputs one_reading(const char* note, acoustics::ValveSet valves, double cents) {
    TuningInputs inputs = fresh_inputs();
    studio::TuningSheet sheet = empty_sheet(inputs.today);
    sheet.readings.push_back({*units::parse_pitch(note), {valves, 0}, 0, 1, units::Cents(cents)});
    inputs.sheets = {sheet};
    return inputs;
}

TEST(AnswerRefusals, AFingeringThatCannotSoundTheNote) {
    EXPECT_THAT(refusal(one_reading("Bb1", {2}, 3.0)),
                AllOf(HasSubstr("Bb1 with 2"), HasSubstr("2026-03-02"), HasSubstr("cannot sound")));
    EXPECT_THAT(refusal(one_reading("C2", {4}, 3.0)), HasSubstr("no such fingering"));
}

TEST(AnswerRefusals, AReadingOfAnotherNote) {
    EXPECT_THAT(refusal(one_reading("Bb1", {}, 700.0)),
                AllOf(HasSubstr("Bb1"), HasSubstr("700"), HasSubstr("100")));
    EXPECT_THAT(refusal(one_reading("Bb1", {}, std::numeric_limits<double>::quiet_NaN())), HasSubstr("Bb1"));
}

TEST(AnswerRefusals, ASlideThatTheHornHasNot) {
    TuningInputs inputs = fresh_inputs();
    inputs.hand.fixed = {"fifth"};
    EXPECT_THAT(refusal(inputs), AllOf(HasSubstr("fifth"), HasSubstr("main, first, second, third")));
}

TEST(AnswerRefusals, TravelBelowLeastAndPositionsBeyondTravel) {
    TuningInputs inputs = fresh_inputs();
    inputs.hand.travel["main"] = Millimetres(3.0);
    EXPECT_THAT(refusal(inputs), AllOf(HasSubstr("main"), HasSubstr("least")));
    inputs = fresh_inputs();
    inputs.positions["second"] = Millimetres(80.0);
    EXPECT_THAT(refusal(inputs), AllOf(HasSubstr("second"), HasSubstr("80")));
}

TEST(AnswerRefusals, OneReadingAndContradictingReadingsAreAnswers) {
    EXPECT_EQ(refusal(one_reading("Bb1", {}, 5.0)), "not refused");
    TuningInputs inputs = one_reading("Bb1", {}, -45.0);
    studio::Reading other = inputs.sheets.front().readings.front();
    other.take = 2;
    other.cents = units::Cents(45.0);
    inputs.sheets.front().readings.push_back(other);
    EXPECT_EQ(refusal(inputs), "not refused");
    EXPECT_EQ(answer(inputs).profile.outlying.size(), 1U);
}

TEST(AnswerRefusals, AFalseToneIsKeptAndNotUsed) {
    // Eb1 open, a fifth below the second partial, is played on tubas though the horn has no resonance there.
    const TuningInputs inputs = one_reading("Eb1", {}, 10.0);
    EXPECT_EQ(refusal(inputs), "not refused");
    const TuningProfile profile = answer(inputs).profile;
    EXPECT_EQ(profile.false_tones_left_out, 1);
    EXPECT_EQ(profile.takes_used, 0);
}

}  // namespace
}  // namespace lowledger::tuning
