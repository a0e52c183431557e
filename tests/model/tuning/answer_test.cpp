#include "model/tuning/answer.h"

#include <algorithm>
#include <gtest/gtest.h>

#include "model/horns/chart.h"
#include "tests/model/tuning/played_horn.h"

namespace lowledger::tuning {
namespace {

using units::Cents;
using units::Millimetres;

TrueHorn sharp_horn() {
    TrueHorn horn;
    horn.extra_open = Millimetres(-90.0);
    horn.noise = Cents(3.0);
    return horn;
}

TuningInputs measured(studio::Level level = studio::Level::middle, const std::string& kind = "bbb-tuba-3") {
    TuningInputs inputs = fresh_inputs(level, kind);
    inputs.sheets = {sheet_of(inputs, sharp_horn(), 2, {"F1", "Bb2", "F2"})};
    return inputs;
}

const SlideAnswer& slide(const TuningAnswer& answer, const std::string& id) {
    return *std::ranges::find(answer.settings.slides, id, &SlideAnswer::slide);
}

TEST(Answer, WithoutReadingsMovesNothingAndAsksForTheFirstTuningNote) {
    const TuningAnswer answer = tuning::answer(fresh_inputs());
    EXPECT_FALSE(answer.enough.tuning_notes_in());
    EXPECT_EQ(answer.enough.missing.size(), 4U);
    EXPECT_FALSE(answer.settings.anything_moves());
    EXPECT_TRUE(answer.remains.notes.empty());
    ASSERT_TRUE(answer.next_note);
    EXPECT_EQ(units::file_name(answer.next_note->note), "Bb1");
}

TEST(Answer, WaitsForTheLastTuningNote) {
    TuningInputs inputs = measured();
    std::erase_if(inputs.sheets.front().readings,
                  [](const studio::Reading& reading) { return reading.fingering.valves.text() == "23"; });
    TuningAnswer answer = tuning::answer(inputs);
    ASSERT_EQ(answer.enough.missing.size(), 1U);
    EXPECT_EQ(answer.enough.missing[0].slide, "third");
    EXPECT_FALSE(answer.settings.anything_moves());
    // Of a slide that does not move no note is needed.
    inputs.slides[3].stuck = true;
    answer = tuning::answer(inputs);
    EXPECT_TRUE(answer.enough.tuning_notes_in());
    EXPECT_TRUE(answer.settings.anything_moves());
    EXPECT_EQ(slide(answer, "third").advice, Advice::fixed);
}

TEST(Answer, ASharpHornIsPulledOut) {
    for (const studio::Level level :
         {studio::Level::beginner, studio::Level::middle, studio::Level::advanced}) {
        const TuningAnswer answer = tuning::answer(measured(level));
        EXPECT_EQ(slide(answer, "main").advice, Advice::move);
        EXPECT_GT(slide(answer, "main").recommended, slide(answer, "main").now);
        EXPECT_LT(answer.settings.mean_after, answer.settings.mean_before);
    }
}

TEST(Answer, WhoReadsLessIsLessSure) {
    const TuningAnswer beginner = tuning::answer(measured(studio::Level::beginner));
    const TuningAnswer advanced = tuning::answer(measured(studio::Level::advanced));
    EXPECT_GT(*slide(beginner, "main").half_width, *slide(advanced, "main").half_width);
}

TEST(Answer, EqualInputsGiveEqualAnswers) {
    const TuningAnswer one = tuning::answer(measured());
    const TuningAnswer two = tuning::answer(measured());
    EXPECT_EQ(one.profile, two.profile);
    EXPECT_EQ(one.card.steps, two.card.steps);
    EXPECT_EQ(one.remains, two.remains);
}

TEST(Answer, TheTeachersHandHolds) {
    TuningInputs inputs = measured();
    inputs.hand.fixed = {"main"};
    EXPECT_EQ(slide(tuning::answer(inputs), "main").advice, Advice::fixed);

    inputs = measured();
    inputs.hand.travel["main"] = Millimetres(25.0);
    TuningAnswer answer = tuning::answer(inputs);
    EXPECT_LE(slide(answer, "main").recommended, Millimetres(25.0));
    EXPECT_EQ(slide(answer, "main").travel, Millimetres(25.0));

    inputs = measured();
    inputs.hand.step = Millimetres(1.0);
    EXPECT_EQ(tuning::answer(inputs).settings.constants.step, Millimetres(1.0));

    inputs = measured();
    const units::Pitch low = *units::parse_pitch("F1");
    inputs.hand.weights[low] = 0.0;
    answer = tuning::answer(inputs);
    const auto note = std::ranges::find(answer.settings.notes, low, &NoteAnswer::note);
    EXPECT_EQ(note->weight, 0.0);
}

TEST(Answer, StepsAreFiveMillimetresOnATuba) {
    const TuningAnswer answer = tuning::answer(measured());
    EXPECT_EQ(answer.question.constants.step, Millimetres(5.0));
    EXPECT_NEAR(std::remainder(slide(answer, "main").recommended.value(), 5.0), 0.0, 1e-9);
}

TEST(Answer, OfAnUnknownPositionItSaysHowFar) {
    TuningInputs inputs = measured();
    inputs.positions.erase("main");
    inputs.sheets.front().positions.erase("main");
    const TuningAnswer answer = tuning::answer(inputs);
    EXPECT_FALSE(slide(answer, "main").position_known);
    EXPECT_FALSE(answer.card.steps.front().position_known);
    EXPECT_GT(answer.card.steps.front().change.value(), 0.0);
}

TEST(Answer, BeginnersKeepTheUsualFingering) {
    const TuningAnswer answer = tuning::answer(measured(studio::Level::beginner));
    for (const QuestionNote& note : answer.question.notes)
        EXPECT_EQ(note.ways.size(), 1U);
    for (const RemainingNote& note : answer.remains.notes)
        EXPECT_NE(note.next, Remedy::other_fingering);
    bool alternates = false;
    for (const QuestionNote& note : tuning::answer(measured(studio::Level::advanced)).question.notes)
        alternates = alternates || note.ways.size() > 1;
    EXPECT_TRUE(alternates);
}

TEST(Remains, NotesOutsideTheToleranceAndHowFarThePlayerGoes) {
    const TuningInputs inputs = measured(studio::Level::beginner);
    const TuningAnswer answer = tuning::answer(inputs);
    const LevelFigures& level = figures().beginner;
    EXPECT_EQ(answer.remains.tolerance, level.tolerance);
    ASSERT_FALSE(answer.remains.notes.empty());
    for (const RemainingNote& note : answer.remains.notes) {
        EXPECT_GT(units::abs(note.lean), level.tolerance);
        EXPECT_LE(note.bend, level.lip_up);
        EXPECT_GE(note.bend, -level.lip_down);
        EXPECT_LT(note.bend.value() * note.lean.value(), 0.0);
        EXPECT_GT(note.chance, 0.5);
        const Cents needed = units::abs(note.lean) - level.tolerance;
        const Cents most = note.lean.value() > 0.0 ? level.lip_down : level.lip_up;
        EXPECT_EQ(note.next == Remedy::beyond_player, needed > most);
    }
}

TEST(NextNote, IsOfAValveThatIsLeastKnown) {
    TuningInputs inputs = measured(studio::Level::advanced);
    // Many takes of all but the third valve.
    for (int k = 0; k < 6; ++k) {
        studio::TuningSheet more = sheet_of(inputs, sharp_horn(), 3, {"Bb2", "F2", "Eb2", "Ab2", "A2", "E2"});
        std::erase_if(more.readings,
                      [](const auto& reading) { return reading.fingering.valves.contains(3); });
        more.id.number = k + 2;
        inputs.sheets.push_back(more);
    }
    const TuningAnswer answer = tuning::answer(inputs);
    ASSERT_TRUE(answer.next_note);
    EXPECT_TRUE(answer.next_note->fingering.valves.contains(3)) << answer.next_note->fingering.valves.text();
}

TEST(Answer, EveryKindInTheCatalogueIsAnswered) {
    for (const horns::HornKind& kind : horns::built_in_kinds()) {
        TuningInputs inputs = fresh_inputs(studio::Level::middle, kind.id);
        inputs.sheets = {sheet_of(inputs, sharp_horn())};
        const TuningAnswer answer = tuning::answer(inputs);
        EXPECT_TRUE(answer.enough.tuning_notes_in()) << kind.id;
        EXPECT_EQ(answer.card.steps.size(), kind.tuning_order.size()) << kind.id;
        EXPECT_TRUE(answer.card.band_note) << kind.id;
        EXPECT_LE(answer.settings.objective_after,
                  answer.settings.objective_before + units::SquareCents(1e-6))
            << kind.id;
    }
}

}  // namespace
}  // namespace lowledger::tuning
