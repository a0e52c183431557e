#include <algorithm>
#include <cmath>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "model/tuning/weights.h"
#include "model/units/refusal.h"
#include "tests/model/tuning/played_horn.h"

namespace lowledger::tuning {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using units::Cents;
using units::Millimetres;

TuningInputs measured(studio::Level level, const TrueHorn& horn, const std::string& kind = "bbb-tuba-3",
                      int takes = 3) {
    TuningInputs inputs = fresh_inputs(level, kind);
    inputs.sheets = {sheet_of(inputs, horn, takes, {"F1", "Bb2", "F2", "C2", "Gb1", "Gb2"})};
    return inputs;
}

TEST(BothMains, DifferByTheAnsweredPartOfThePlayersPitch) {
    // Another horn's sheet, flat kind of player on it too, tells the player from the horn.
    TrueHorn horn;
    horn.player = Cents(20.0);
    TuningInputs inputs = measured(studio::Level::middle, horn);
    inputs.other_horns = {{inputs.kind, inputs.positions, inputs.sheets}};
    inputs.hand.step = Millimetres(0.0);
    const TuningAnswer answer = tuning::answer(inputs);
    ASSERT_TRUE(answer.both_mains);
    const SettledPitch& pitch = answer.profile.settled_pitch;
    EXPECT_GT(pitch.mean.value(), 5.0);
    EXPECT_NEAR(pitch.answered.value(), 0.8 * pitch.mean.value(), 1e-9);
    EXPECT_EQ(answer.both_mains->slide, "main");
    // Cents a mm on the open horn, less where valves are down: the mm lie between both.
    const double open = 1200.0 * 2.0 / (std::log(2.0) * answer.question.tube.open.value());
    const double by = answer.both_mains->by_player().value();
    EXPECT_GT(by, pitch.answered.value() / open);
    EXPECT_LT(by, 1.5 * pitch.answered.value() / open);
    // The cap on the mean lean counts the chosen ways here, those of the free optimum in the settings.
    EXPECT_NEAR(answer.both_mains->with_player.value(), answer.settings.slides[0].recommended.value(), 3.0);
}

TEST(BothMains, AreNotSaidOfAHeldSlideNorBeforeTheTuningNotes) {
    TuningInputs inputs = measured(studio::Level::middle, {});
    inputs.hand.fixed = {"main"};
    EXPECT_FALSE(tuning::answer(inputs).both_mains);
    EXPECT_FALSE(tuning::answer(fresh_inputs()).both_mains);
}

TEST(NotesForSlides, TheSurerOfTheNotesThroughTheThirdComesFirst) {
    const TuningAnswer answer = tuning::answer(measured(studio::Level::middle, {}));
    ASSERT_EQ(answer.notes_for_slides.size(), 1U);
    const NotesForSlide& third = answer.notes_for_slides.front();
    EXPECT_EQ(third.slide, "third");
    ASSERT_GE(third.notes.size(), 2U);
    for (std::size_t i = 0; i < third.notes.size(); ++i) {
        EXPECT_EQ(third.notes[i].fingering.valves.text(), "23");
        if (i == 0) continue;
        const auto badness = [](const NoteForSlide& note) {
            return note.spread.value() * note.spread.value() / note.weight;
        };
        EXPECT_LE(badness(third.notes[i - 1]), badness(third.notes[i]));
    }
}

TEST(NotesForSlides, WeightDecidesBetweenNotesThatTellTheSame) {
    TuningInputs inputs = measured(studio::Level::middle, {});
    inputs.hand.weights = weights_named("shares:Bb1=1,Gb1=1,Db2=20", inputs.kind);
    EXPECT_EQ(units::file_name(tuning::answer(inputs).notes_for_slides.at(0).notes[0].note), "Db2");
    inputs.hand.weights = weights_named("shares:Bb1=1,Gb1=20,Db2=1", inputs.kind);
    EXPECT_EQ(units::file_name(tuning::answer(inputs).notes_for_slides.at(0).notes[0].note), "Gb1");
}

TEST(Families, ThirdForFirstAndSecondWhereThatIsBetterForAllOfThem) {
    // A third valve whose tube comes right alone, and 1-2 very sharp.
    TrueHorn horn;
    horn.extra_valve = {Millimetres(-70.0), Millimetres(-40.0), Millimetres(0.0)};
    TuningInputs inputs = measured(studio::Level::advanced, horn);
    inputs.hand.fixed = {"first", "second", "third"};
    const TuningAnswer answer = tuning::answer(inputs);
    const auto rule = std::ranges::find_if(answer.families, [](const FamilyRule& family) {
        return family.usual.valves.text() == "12" && family.instead.valves.text() == "3";
    });
    ASSERT_NE(rule, answer.families.end());
    EXPECT_GE(rule->notes.size(), 2U);
    EXPECT_LT(rule->by_rule, rule->by_usual);
    EXPECT_GE(rule->by_rule.value(), rule->by_choice.value() - 1e-9);
    EXPECT_LE(rule->by_rule.value(), 1.1 * rule->by_choice.value());
}

TEST(Families, AreNotOfferedToBeginners) {
    TrueHorn horn;
    horn.extra_valve = {Millimetres(-70.0), Millimetres(-40.0), Millimetres(0.0)};
    EXPECT_TRUE(tuning::answer(measured(studio::Level::beginner, horn)).families.empty());
}

TEST(WhilePlaying, AnAdvancedPlayerPullsTheFirstForASharpOneAndThree) {
    TuningInputs inputs = measured(studio::Level::advanced, {});
    inputs.hand.fixed = {"first"};
    const TuningAnswer answer = tuning::answer(inputs);
    const auto pulled =
        std::ranges::find(answer.remains.notes, Remedy::slide_while_playing, &RemainingNote::next);
    ASSERT_NE(pulled, answer.remains.notes.end());
    EXPECT_EQ(pulled->slide, "first");
    EXPECT_TRUE(pulled->fingering.valves.contains(1));
    EXPECT_GT(pulled->lean.value(), 0.0);
    // The pull takes what the note leans, with what the player takes back, on the slope of its own length.
    const SlideAnswer& first = answer.settings.slides[1];
    EXPECT_LE(*pulled->slide_by + first.recommended, first.travel);
    const double slope = 1200.0 * 2.0 / (std::log(2.0) * 7900.0) * (1.0 - answer.profile.correction.part);
    EXPECT_NEAR(pulled->slide_by->value(), pulled->lean.value() / slope, 0.2 * pulled->slide_by->value());
    // A stuck slide is not pulled, nor does a middle player pull one.
    inputs.slides[1].stuck = true;
    const auto pulls = [](const TuningInputs& of) {
        const auto remains = tuning::answer(of).remains;
        return std::ranges::count(remains.notes, Remedy::slide_while_playing, &RemainingNote::next);
    };
    EXPECT_EQ(pulls(inputs), 0);
    EXPECT_EQ(pulls(measured(studio::Level::middle, {})), 0);
}

TEST(Weights, ByNotesScaleRegisterAndShares) {
    const horns::HornKind kind = fresh_inputs().kind;
    const auto weight = [](const std::map<units::Pitch, double>& weights, const char* note) {
        return weights.at(*units::parse_pitch(note));
    };
    const auto notes = weights_named("notes:Bb1, C2", kind);
    EXPECT_EQ(weight(notes, "C2"), 1.0);
    EXPECT_EQ(weight(notes, "D2"), 0.0);
    const auto scale = weights_named("scale:Bb1", kind);
    EXPECT_EQ(weight(scale, "Eb2"), 1.0);
    EXPECT_EQ(weight(scale, "E2"), 0.0);
    EXPECT_EQ(std::ranges::count_if(scale, [](const auto& entry) { return entry.second > 0.0; }), 8);
    EXPECT_EQ(weight(weights_named("register:low", kind), "F1"), 1.0);
    EXPECT_EQ(weight(weights_named("register:low", kind), "Bb2"), 0.0);
    double all = 0.0;
    for (const char* third : {"register:low", "register:middle", "register:high"})
        for (const auto& [note, of_third] : weights_named(third, kind))
            all += of_third;
    EXPECT_EQ(all, static_cast<double>(notes.size()));
    EXPECT_EQ(weight(weights_named("shares:Bb1=3,C2=0.5", kind), "C2"), 0.5);
}

TEST(Weights, WhatIsNamedWronglyIsRefused) {
    const horns::HornKind kind = fresh_inputs().kind;
    const auto refusal = [&](const char* what) -> std::string {
        try {
            weights_named(what, kind);
        } catch (const units::Refusal& refused) {
            return refused.what();
        }
        return "not refused";
    };
    EXPECT_THAT(refusal("Bb1"), HasSubstr("notes:Bb1,C2"));
    EXPECT_THAT(refusal("chords:Bb1"), HasSubstr("chords"));
    EXPECT_THAT(refusal("notes:H1"), HasSubstr("\"H1\" is no note"));
    EXPECT_THAT(refusal("notes:Bb6"), AllOf(HasSubstr("Bb6"), HasSubstr("range")));
    EXPECT_THAT(refusal("scale:Bb3"), HasSubstr("range"));
    EXPECT_THAT(refusal("register:top"), HasSubstr("top"));
    EXPECT_THAT(refusal("shares:Bb1"), HasSubstr("share above 0"));
    EXPECT_THAT(refusal("shares:Bb1=0"), HasSubstr("share above 0"));
}

TEST(Limits, ATubeTooShortIsForTheTechnician) {
    TrueHorn horn;
    horn.extra_valve = {Millimetres(0.0), Millimetres(-80.0), Millimetres(0.0)};
    const TuningAnswer answer = tuning::answer(measured(studio::Level::advanced, horn));
    const auto second = std::ranges::find(answer.tubes_off, "second", &TubeOff::slide);
    ASSERT_NE(second, answer.tubes_off.end());
    EXPECT_EQ(second->limit, Limit::travel);
    EXPECT_GT(second->left.value(), 2.0);
}

TEST(Limits, AllSlidesFixedStillTellWhatRemains) {
    TrueHorn horn;
    horn.extra_open = Millimetres(-150.0);
    TuningInputs inputs = measured(studio::Level::middle, horn);
    for (studio::HornSlide& slide : inputs.slides)
        slide.stuck = true;
    const TuningAnswer answer = tuning::answer(inputs);
    EXPECT_FALSE(answer.settings.anything_moves());
    for (const SlideAnswer& slide : answer.settings.slides) {
        EXPECT_EQ(slide.advice, Advice::fixed);
        EXPECT_EQ(slide.recommended, slide.now);
    }
    EXPECT_FALSE(answer.both_mains);
    EXPECT_TRUE(answer.tubes_off.empty());
    EXPECT_FALSE(answer.remains.notes.empty());
}

TEST(Limits, UnknownPositionsGiveChangesOnly) {
    TrueHorn horn;
    horn.extra_open = Millimetres(-120.0);
    TuningInputs inputs = measured(studio::Level::middle, horn);
    inputs.positions.clear();
    for (studio::TuningSheet& sheet : inputs.sheets)
        sheet.positions.clear();
    const TuningAnswer answer = tuning::answer(inputs);
    EXPECT_TRUE(answer.settings.anything_moves());
    for (const SlideAnswer& slide : answer.settings.slides)
        EXPECT_FALSE(slide.position_known);
    EXPECT_GT((answer.settings.slides[0].recommended - answer.settings.slides[0].now).value(), 0.0);
    EXPECT_TRUE(answer.tubes_off.empty());
}

TEST(Limits, OneReadingMovesNothingAndAsksOn) {
    TuningInputs inputs = fresh_inputs();
    studio::TuningSheet sheet = empty_sheet(inputs.today);
    sheet.readings.push_back({*units::parse_pitch("Bb1"), {}, 0, 1, Cents(30.0)});
    inputs.sheets = {sheet};
    const TuningAnswer answer = tuning::answer(inputs);
    EXPECT_FALSE(answer.settings.anything_moves());
    EXPECT_EQ(answer.enough.missing.size(), 3U);
    ASSERT_TRUE(answer.next_note);
    EXPECT_EQ(answer.next_note->note, answer.enough.missing.front().note);
}

TEST(Bore, WhatWasSeenOfAMoveIsHowFarTheNextOneGoes) {
    // Two sheets, the main slide 40 mm further out on the second, and the notes fall less than its length
    // says.
    TrueHorn horn;
    TuningInputs inputs = fresh_inputs(studio::Level::advanced);
    studio::TuningSheet before = sheet_of(inputs, horn, 6);
    before.on = studio::Date::parse_iso("2026-01-05").value();
    before.positions = inputs.positions;
    inputs.positions["main"] = inputs.positions["main"] + Millimetres(40.0);
    studio::TuningSheet after = sheet_of(inputs, horn, 6);
    after.positions = inputs.positions;
    for (studio::Reading& reading : after.readings)
        reading.cents = reading.cents + Cents(5.0);
    inputs.sheets = {before, after};
    const TuningAnswer answer = tuning::answer(inputs);
    EXPECT_LT(answer.profile.slides[0].bore, 1.0);
    EXPECT_EQ(answer.question.tube.slides[0].bore, answer.profile.slides[0].bore);
}

}  // namespace
}  // namespace lowledger::tuning
