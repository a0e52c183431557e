#include <cmath>
#include <gtest/gtest.h>

#include "tests/model/tuning/played_horn.h"

namespace lowledger::tuning {
namespace {

using units::Cents;
using units::Millimetres;

TrueHorn flat_valves() {
    TrueHorn horn;
    horn.extra_open = Millimetres(-60.0);
    horn.extra_valve = {Millimetres(-40.0), Millimetres(-12.0), Millimetres(-50.0)};
    return horn;
}

/// An advanced student of whom much is known, without noise.
TuningInputs well_known(const TrueHorn& horn) {
    TuningInputs inputs = fresh_inputs(studio::Level::advanced);
    for (int k = 0; k < 20; ++k) {
        inputs.sheets.push_back(sheet_of(inputs, horn, 3, {"F1", "Bb2", "F2", "G2", "Eb2", "C2"}));
        inputs.sheets.back().id.number = k + 1;
    }
    inputs.hand.step = Millimetres(0.0);
    return inputs;
}

/// What a student who follows the card ends up with: sets the mm, reads, and moves by the card's part of a
/// miss that is outside its tolerance.
std::map<std::string, Millimetres> follow(const TuningInputs& inputs, const TuningCard& card,
                                          const TrueHorn& horn, Cents sitting) {
    std::map<std::string, Millimetres> at = inputs.positions;
    const double kappa = figures().of(inputs.level).kappa;
    Cents open_miss(0.0);
    for (const CardStep& step : card.steps) {
        at[step.slide] = step.to;
        const auto read = [&] {
            return true_reading(inputs, horn, at, step.note, step.fingering, kappa) + sitting;
        };
        const Cents aim = step.aim + (step.shifts_with_open_note ? open_miss : Cents(0.0));
        const Cents miss = read() - aim;
        if (units::abs(miss) > step.tolerance) {
            at[step.slide] += Millimetres(step.part_of_miss * miss.value() / step.cents_per_mm.value());
        }
        if (!step.shifts_with_open_note) open_miss = read() - aim;
    }
    return at;
}

TEST(Card, StepsComeInWorkingOrder) {
    const TuningAnswer answer = tuning::answer(well_known(flat_valves()));
    ASSERT_EQ(answer.card.steps.size(), 4U);
    EXPECT_EQ(answer.card.steps[0].slide, "main");
    EXPECT_FALSE(answer.card.steps[0].shifts_with_open_note);
    EXPECT_EQ(answer.card.steps[1].slide, "second");
    EXPECT_EQ(answer.card.steps[2].slide, "first");
    EXPECT_EQ(answer.card.steps[3].slide, "third");
    EXPECT_EQ(answer.card.steps[3].fingering.valves.text(), "23");
    for (const CardStep& step : answer.card.steps) {
        EXPECT_EQ(step.change, step.to - step.now);
        EXPECT_GT(step.part_of_miss, 0.0);
        EXPECT_LT(step.part_of_miss, 1.0);
    }
    EXPECT_EQ(answer.card.warm_up_minutes, 10);
    EXPECT_EQ(answer.card.takes, 3);
}

TEST(Card, WithoutNoiseLandsWithinHalfAMillimetre) {
    const TuningInputs inputs = well_known(flat_valves());
    const TuningAnswer answer = tuning::answer(inputs);
    ASSERT_EQ(answer.card.steps[0].advice, Advice::move);
    const auto landed = follow(inputs, answer.card, flat_valves(), Cents(0.0));
    for (const CardStep& step : answer.card.steps)
        EXPECT_NEAR(landed.at(step.slide).value(), step.to.value(), 0.5) << step.slide;
}

TEST(Card, ASittingsOffsetDoesNotReachTheValveSlides) {
    const TuningInputs inputs = well_known(flat_valves());
    const TuningAnswer answer = tuning::answer(inputs);
    for (const double sitting : {-20.0, -6.0, 6.0, 20.0}) {
        const auto landed = follow(inputs, answer.card, flat_valves(), Cents(sitting));
        for (const CardStep& step : answer.card.steps) {
            if (step.shifts_with_open_note) {
                EXPECT_NEAR(landed.at(step.slide).value(), step.to.value(), 0.5)
                    << step.slide << " " << sitting;
            }
        }
    }
}

TEST(Card, TheAimIsWhatTheTunerShowsThere) {
    const TrueHorn horn = flat_valves();
    TuningInputs inputs = well_known(horn);
    const TuningAnswer answer = tuning::answer(inputs);
    std::map<std::string, Millimetres> at;
    for (const SlideAnswer& slide : answer.settings.slides)
        at[slide.slide] = slide.recommended;
    for (const CardStep& step : answer.card.steps) {
        const Cents shown = true_reading(inputs, horn, at, step.note, step.fingering, 0.3);
        EXPECT_NEAR(step.aim.value(), shown.value(), 2.5) << step.slide;
    }
}

TEST(Card, IsForTodaysRoomAndTheStudentsTuner) {
    TuningInputs inputs = well_known(flat_valves());
    const TuningCard plain = tuning::answer(inputs).card;
    inputs.tuner_a4 = units::Hertz(442.0);
    inputs.room_today = units::Celsius(26.0);
    const TuningCard card = tuning::answer(inputs).card;
    const double expected = 1200.0 * std::log2(440.0 / 442.0) + 0.75 * 600.0 * std::log2(299.15 / 294.15);
    for (std::size_t i = 0; i < card.steps.size(); ++i)
        EXPECT_NEAR((card.steps[i].aim - plain.steps[i].aim).value(), expected, 1e-9);
    EXPECT_NEAR((card.band_note->reading - plain.band_note->reading).value(), expected, 1e-9);
    EXPECT_TRUE(card.room_known);
    EXPECT_FALSE(plain.room_known);
}

TEST(Card, TheBandNoteReadsZeroWhenAsked) {
    TuningInputs inputs = well_known(flat_valves());
    inputs.hand.band_note_at_zero = true;
    const TuningCard card = tuning::answer(inputs).card;
    ASSERT_TRUE(card.band_note);
    EXPECT_EQ(units::file_name(card.band_note->note), "Bb1");
    EXPECT_NEAR(card.band_note->reading.value(), 0.0, 0.05);
}

}  // namespace
}  // namespace lowledger::tuning
