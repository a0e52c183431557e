#include <cmath>
#include <gtest/gtest.h>
#include <map>

#include "model/tuning/conditioning.h"
#include "model/tuning/predictions.h"
#include "tests/model/tuning/played_horn.h"

namespace lowledger::tuning {
namespace {

using units::Cents;
using units::Millimetres;

TrueHorn sharp_horn() {
    TrueHorn horn;
    horn.extra_open = Millimetres(-50.0);
    horn.extra_valve = {Millimetres(-10.0), Millimetres(4.0)};
    horn.noise = Cents(4.0);
    return horn;
}

const ProfileNote& usual(const TuningAnswer& answer, const char* name) {
    return *answer.profile.usual(*units::parse_pitch(name));
}

TEST(Profile, WithoutReadingsIsTheKinds) {
    const TuningAnswer answer = tuning::answer(fresh_inputs());
    EXPECT_NEAR(usual(answer, "Bb1").mean.value(), 0.0, 1e-9);
    // Third built to make a major third with the second, so 1-3 is 15.53 cents sharp and 1-2 10.63 (equal
    // temperament and lengths alone); the player takes a fifth of it back.
    EXPECT_NEAR(usual(answer, "F1").mean.value(), 0.8 * 15.529, 0.01);
    EXPECT_NEAR(usual(answer, "G1").mean.value(), 0.8 * 10.634, 0.01);
    for (const ProfileNote& note : answer.profile.notes) {
        EXPECT_EQ(note.takes, 0);
        EXPECT_NEAR(note.share_of_data, 0.0, 1e-12);
    }
}

/// The unknowns of the model as a state, updated one reading at a time by the scalar Kalman step: another
/// road to the same posterior.
class OneByOne {
  public:
    void see(const Row& row) {
        for (const Term& term : row.terms)
            know(term);
        std::map<TermKey, double> gain;
        double variance = row.noise;
        double expected = 0.0;
        for (const auto& [key, mean] : mean_) {
            for (const Term& term : row.terms)
                gain[key] += covariance(key, term.key) * term.coefficient;
        }
        for (const Term& term : row.terms) {
            variance += term.coefficient * gain[term.key];
            expected += term.coefficient * mean_[term.key];
        }
        for (auto& [key, mean] : mean_)
            mean += gain[key] / variance * (row.off - expected);
        for (const auto& [a, ga] : gain) {
            for (const auto& [b, gb] : gain)
                covariance_[{a, b}] = covariance(a, b) - ga * gb / variance;
        }
    }

    double mean(const Terms& terms) {
        double sum = 0.0;
        for (const Term& term : terms) {
            know(term);
            sum += term.coefficient * mean_[term.key];
        }
        return sum;
    }

    double variance(const Terms& terms) {
        double sum = 0.0;
        for (const Term& a : terms) {
            know(a);
            for (const Term& b : terms)
                sum += a.coefficient * b.coefficient * covariance(a.key, b.key);
        }
        return sum;
    }

  private:
    void know(const Term& term) {
        if (!mean_.emplace(term.key, 0.0).second) return;
        covariance_[{term.key, term.key}] = term.law.spread * term.law.spread;
    }
    double covariance(const TermKey& a, const TermKey& b) const {
        const auto at = covariance_.find({a, b});
        return at == covariance_.end() ? 0.0 : at->second;
    }

    std::map<TermKey, double> mean_;
    std::map<std::pair<TermKey, TermKey>, double> covariance_;
};

TEST(Profile, EqualsUpdatingOneReadingAtATime) {
    for (const studio::Level level : {studio::Level::beginner, studio::Level::advanced}) {
        TuningInputs inputs = fresh_inputs(level);
        inputs.sheets = {sheet_of(inputs, sharp_horn(), 2, {"F1", "Bb2", "G2"}),
                         sheet_of(inputs, sharp_horn(), 3)};
        inputs.sheets[1].positions.erase("first");
        inputs.sheets[1].room.reset();
        inputs.sheets[1].mouthpiece = "another";
        inputs.sheets[0].room = units::Celsius(17.0);
        inputs.positions.erase("third");
        const Evidence evidence = evidence_of(inputs, figures());
        OneByOne state;
        for (const Row& row : rows_of(evidence))
            state.see(row);
        const TuningProfile profile = tuning::answer(inputs).profile;
        const Predictions predictions =
            predictions_of(evidence, ways_to_play(inputs, evidence.own().sheets.used), 0.0);
        ASSERT_EQ(predictions.as_played.terms.size(), profile.notes.size());
        for (std::size_t i = 0; i < profile.notes.size(); ++i) {
            const ProfileNote& note = profile.notes[i];
            const Terms& played = predictions.as_played.terms[i];
            EXPECT_NEAR(note.mean.value(), predictions.as_played.expected[i] + state.mean(played), 1e-9);
            EXPECT_NEAR(note.spread.value(), std::sqrt(state.variance(played)), 1e-9);
            EXPECT_NEAR(note.slides_spread.value(),
                        std::sqrt(state.variance(predictions.for_slides.terms[i])), 1e-9);
        }
    }
}

TEST(Profile, ManySheetsFindTheHorn) {
    TuningInputs inputs = fresh_inputs(studio::Level::advanced);
    TrueHorn horn = sharp_horn();
    for (unsigned k = 0; k < 12; ++k) {
        horn.seed = k + 1;
        inputs.sheets.push_back(sheet_of(inputs, horn, 3, {"F1", "Bb2", "F2", "G2"}));
        inputs.sheets.back().on = inputs.today - static_cast<int>(7 * k);
    }
    const TuningAnswer answer = tuning::answer(inputs);
    for (const char* name : {"Bb1", "A1", "Ab1", "F1"}) {
        const ProfileNote& note = usual(answer, name);
        const Cents truth = true_reading(inputs, horn, inputs.positions, note.note, note.fingering, 0.3);
        EXPECT_NEAR(note.mean.value(), truth.value(), 2.5) << name;
        EXPECT_GT(note.share_of_data, 0.8) << name;
    }
}

TEST(Profile, AnotherTunerOrRoomChangesNothingButTheNumbersRead) {
    TuningInputs inputs = fresh_inputs();
    inputs.sheets = {sheet_of(inputs, sharp_horn())};
    const Cents at_440 = usual(tuning::answer(inputs), "Bb1").mean;
    // A tuner set to 442 shows 7.85 less for the same sound.
    studio::TuningSheet& sheet = inputs.sheets.front();
    sheet.tuner_a4 = units::Hertz(442.0);
    for (studio::Reading& reading : sheet.readings)
        reading.cents -= Cents(7.851);
    EXPECT_NEAR(usual(tuning::answer(inputs), "Bb1").mean.value(), at_440.value(), 0.01);
    // 11 C below the usual room: 0.75 of 33 cents flat.
    sheet.room = units::Celsius(10.0);
    for (studio::Reading& reading : sheet.readings)
        reading.cents += Cents(0.75 * 600.0 * std::log2(283.15 / 294.15));
    const TuningAnswer cold_room = tuning::answer(inputs);
    // Less sure of it, so drawn a little more towards the kind.
    EXPECT_NEAR(usual(cold_room, "Bb1").mean.value(), at_440.value(), 1.5);
}

TEST(Profile, AStudioAt442WantsTheHornShorter) {
    TuningInputs inputs = fresh_inputs();
    inputs.studio_a4 = units::Hertz(442.0);
    inputs.tuner_a4 = units::Hertz(442.0);
    EXPECT_NEAR(usual(tuning::answer(inputs), "Bb1").slides_mean.value(), -7.851, 0.001);
}

TEST(Profile, WhatIsNotKnownWidensTheSpread) {
    TuningInputs inputs = fresh_inputs();
    inputs.sheets = {sheet_of(inputs, sharp_horn())};
    const Cents known = usual(tuning::answer(inputs), "Bb1").spread;
    TuningInputs no_room = inputs;
    no_room.sheets.front().room.reset();
    EXPECT_GT(usual(tuning::answer(no_room), "Bb1").spread, known);
    TuningInputs no_place = inputs;
    no_place.sheets.front().positions.clear();
    EXPECT_GT(usual(tuning::answer(no_place), "Bb1").spread, known);
    TuningInputs old = inputs;
    old.sheets.front().on = inputs.today - 300;
    EXPECT_GT(usual(tuning::answer(old), "Bb1").spread, known);
    TuningInputs seen = inputs;
    seen.sheets.front().tuner_seen = true;
    EXPECT_GT(usual(tuning::answer(seen), "Bb1").slides_spread,
              usual(tuning::answer(inputs), "Bb1").slides_spread);
}

TEST(Profile, OldReadingsAreBroughtToWhereTheSlidesStandNow) {
    TuningInputs inputs = fresh_inputs(studio::Level::advanced);
    inputs.sheets = {sheet_of(inputs, sharp_horn(), 3)};
    const ProfileNote before = usual(tuning::answer(inputs), "Bb1");
    inputs.positions["main"] += Millimetres(20.0);
    const ProfileNote after = usual(tuning::answer(inputs), "Bb1");
    // 20 mm on the main slide of a BBb horn: 40 mm of 5903.
    const double pull = -1200.0 * std::log2(1.0 + 40.0 / 5903.3);
    EXPECT_NEAR((after.slides_mean - before.slides_mean).value(), pull, 0.2);
    EXPECT_NEAR((*after.mean_of_takes - *before.mean_of_takes).value(), 0.7 * pull, 0.01);
}

TEST(Profile, ColdAndMutedSheetsAreKeptAndNotUsed) {
    TuningInputs inputs = fresh_inputs();
    inputs.sheets = {sheet_of(inputs, sharp_horn())};
    const TuningProfile plain = tuning::answer(inputs).profile;
    for (int k = 0; k < 2; ++k) {
        studio::TuningSheet other =
            sheet_of(inputs, TrueHorn{.extra_open = Millimetres(200.0), .extra_valve = {}});
        other.id.number = 2 + k;
        other.warm = k == 1;
        other.mute = k == 1;
        inputs.sheets.push_back(other);
    }
    const TuningProfile profile = tuning::answer(inputs).profile;
    EXPECT_EQ(profile.notes, plain.notes);
    EXPECT_EQ(profile.sheets_used, 1);
    ASSERT_EQ(profile.not_used.size(), 2U);
    EXPECT_EQ(profile.not_used[0].why, WhyNotUsed::cold);
    EXPECT_EQ(profile.not_used[1].why, WhyNotUsed::mute);
    EXPECT_EQ(profile.not_used[1].sheet.number, 3);
}

TEST(Outlying, OneFarTakeIsPointedOutAndUsedAllTheSame) {
    for (const int takes : {1, 2, 3}) {
        TuningInputs inputs = fresh_inputs();
        TrueHorn horn = sharp_horn();
        horn.noise = Cents(1.0);
        inputs.sheets = {sheet_of(inputs, horn, takes, {"F1", "Bb2", "F2", "G2", "Eb2"})};
        EXPECT_TRUE(tuning::answer(inputs).profile.outlying.empty()) << takes;
        studio::Reading& reading = inputs.sheets.front().readings[1];
        reading.cents += Cents(60.0);
        const TuningProfile profile = tuning::answer(inputs).profile;
        ASSERT_EQ(profile.outlying.size(), 1U) << takes;
        EXPECT_EQ(profile.outlying[0].note, reading.note);
        EXPECT_EQ(profile.outlying[0].take, 1);
        EXPECT_EQ(profile.outlying[0].reading, reading.cents);
        EXPECT_NEAR(profile.outlying[0].from_fellows.value(), 60.0, takes == 1 ? 12.0 : 4.0);
        EXPECT_EQ(profile.outlying[0].only_take, takes == 1);
        EXPECT_EQ(profile.takes_used, 9 * takes);
        EXPECT_LT(profile.outlying[0].counted, 0.1);
    }
}

TEST(Profile, ATakeThatStandsApartHardlyMovesWhatIsBelieved) {
    for (const int takes : {1, 3}) {
        TuningInputs inputs = fresh_inputs();
        TrueHorn horn = sharp_horn();
        horn.noise = Cents(1.0);
        inputs.sheets = {sheet_of(inputs, horn, takes, {"F1", "Bb2", "F2", "G2", "Eb2"})};
        TuningInputs without = inputs;
        auto& left = without.sheets.front().readings;
        left.erase(left.begin() + 1);
        inputs.sheets.front().readings[1].cents += Cents(60.0);
        const TuningProfile with_it = tuning::answer(inputs).profile;
        const TuningProfile without_it = tuning::answer(without).profile;
        ASSERT_EQ(with_it.outlying.size(), 1U);
        ASSERT_EQ(with_it.notes.size(), without_it.notes.size());
        // It keeps the precision of an error of its size: some parts of a hundred of a take's.
        for (std::size_t i = 0; i < with_it.notes.size(); ++i) {
            EXPECT_NEAR(with_it.notes[i].mean.value(), without_it.notes[i].mean.value(), 2.0);
            EXPECT_LE(with_it.notes[i].spread, without_it.notes[i].spread + Cents(1e-9));
        }
    }
}

}  // namespace
}  // namespace lowledger::tuning
