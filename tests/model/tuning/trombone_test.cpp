#include <cmath>
#include <gtest/gtest.h>

#include "model/horns/hand_slide.h"
#include "tests/model/tuning/played_horn.h"

namespace lowledger::tuning {
namespace {

using studio::Level;
using units::Cents;
using units::Millimetres;

units::Pitch note(const char* name) {
    return units::parse_pitch(name).value();
}

/// Three takes of each of `notes` in its position, all reading `cents`.
struct Read {
    const char* note;
    int position;
    double cents;
};

TuningInputs trombone(const std::vector<Read>& readings, Level level = Level::middle,
                      const std::string& kind = "tenor-trombone") {
    TuningInputs inputs = fresh_inputs(level, kind);
    studio::TuningSheet sheet = empty_sheet(inputs.today);
    sheet.positions = inputs.positions;
    for (const Read& read : readings)
        for (int take = 1; take <= 3; ++take)
            sheet.readings.push_back({note(read.note), {{}, read.position}, 0, take, Cents(read.cents)});
    inputs.sheets.push_back(sheet);
    return inputs;
}

double believed(const TuningAnswer& answer, const char* name, int position) {
    return answer.profile.way(note(name), {{}, position})->slides_mean.value();
}

TEST(Trombone, AMisplacedThirdSaysLittleOfTheHorn) {
    const double open = believed(answer(trombone({{"Bb3", 1, 0}})), "Bb3", 1);
    const double closed_sharp = believed(answer(trombone({{"Bb3", 1, 0}, {"F3", 1, 25}})), "Bb3", 1);
    const double third_sharp = believed(answer(trombone({{"Bb3", 1, 0}, {"Eb3", 3, 25}})), "Bb3", 1);
    EXPECT_GT(closed_sharp, open);
    EXPECT_LT(third_sharp - open, 0.7 * (closed_sharp - open)) << "the arm may have been short";
}

TEST(Trombone, TheBandsNoteComesToZeroWithFirstPlayedOut) {
    for (const auto& [level, home] :
         {std::pair{Level::beginner, 3.0}, {Level::middle, 10.0}, {Level::advanced, 12.0}}) {
        TuningInputs inputs = trombone({{"Bb3", 1, 40}, {"F3", 1, 40}, {"Bb2", 1, 40}}, level);
        inputs.hand.band_note_at_zero = true;
        inputs.hand.step = Millimetres(0.0);
        const TuningAnswer found = answer(inputs);
        EXPECT_EQ(found.card.hand_slide_home, Millimetres(home));
        EXPECT_NEAR(found.card.band_note->reading.value(), 0.0, 0.05);
        EXPECT_GT(found.card.steps.front().aim, Cents(0.0)) << "the slide in, the horn is sharp";
    }
}

TEST(Trombone, EveryNoteHasAPlaceThatBringsItInTuneOrAnEndOfTheSlide) {
    const TuningInputs inputs = trombone({{"Bb3", 1, 5}, {"F3", 1, 5}, {"D4", 1, -25}}, Level::advanced);
    const TuningAnswer found = answer(inputs);
    const auto range = inputs.kind.usual_range;
    EXPECT_EQ(found.places_on_slide.size(), static_cast<std::size_t>((range.high - range.low).count + 1));
    bool flat_fifth = false;
    for (const PlaceOnSlide& place : found.places_on_slide) {
        EXPECT_GE(place.out, Millimetres(0.0));
        EXPECT_LE(place.out, *inputs.kind.hand_slide);
        if (place.reach == Reach::there) {
            EXPECT_EQ(place.left, Cents(0.0));
        }
        if (place.reach == Reach::closed) {
            EXPECT_EQ(place.out, Millimetres(0.0));
            EXPECT_LT(place.left, Cents(0.0));
        }
        if (place.note == note("D4")) flat_fifth = place.offset() < Millimetres(-8.0);
    }
    EXPECT_TRUE(flat_fifth) << "a flat fifth partial is played further in";
    EXPECT_TRUE(answer(fresh_inputs()).places_on_slide.empty()) << "a tuba has no hand slide";
}

TEST(Trombone, WhatRemainsNamesTheSlideWhereItReaches) {
    const TuningAnswer found = answer(trombone(
        {{"Bb3", 1, 5}, {"F3", 1, 5}, {"Eb3", 3, 30}, {"C4", 3, 25}, {"Ab3", 3, 30}}, Level::advanced));
    bool third_out = false;
    for (const RemainingNote& left : found.remains.notes) {
        EXPECT_EQ(left.next == Remedy::hand_slide, left.slide_by.has_value());
        if (left.fingering.position == 3 && left.lean > Cents(0.0)) {
            EXPECT_EQ(left.next, Remedy::hand_slide);
            EXPECT_GT(*left.slide_by, Millimetres(0.0)) << "sharp: further out";
            third_out = true;
        }
    }
    EXPECT_TRUE(third_out);
}

TEST(Trombone, OtherPositionsAreNoChoiceOfTheSettings) {
    const TuningAnswer found =
        answer(trombone({{"Bb3", 1, 5}, {"F3", 1, 5}}, Level::advanced, "tenor-trombone-f"));
    for (const QuestionNote& asked : found.question.notes)
        EXPECT_EQ(asked.ways.size(), 1U) << units::file_name(asked.note);
}

}  // namespace
}  // namespace lowledger::tuning
