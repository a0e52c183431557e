#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <limits>

#include "model/tuning/settings.h"
#include "model/units/refusal.h"
#include "tests/model/tuning/random_question.h"

namespace lowledger::tuning {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using units::Millimetres;

std::string refusal(const SettingsQuestion& question) {
    try {
        recommend(question);
    } catch (const units::Refusal& refusal) {
        return refusal.what();
    }
    return "not refused";
}

TEST(SettingsRefusals, NameTheSlideAndWhatToDo) {
    SettingsQuestion question = random_question(3);
    question.slides[1].slide = "second";
    question.slides[1].least = Millimetres(30.0);
    question.slides[1].travel = Millimetres(20.0);
    EXPECT_THAT(refusal(question),
                AllOf(HasSubstr("second"), HasSubstr("30"), HasSubstr("20"), HasSubstr("correct")));

    question = random_question(3);
    question.slides[0].slide = "main";
    question.slides[0].now = question.slides[0].travel + Millimetres(10.0);
    EXPECT_THAT(refusal(question), AllOf(HasSubstr("main"), HasSubstr("measure it again")));

    question = random_question(3);
    question.slides[0].now = Millimetres(std::numeric_limits<double>::quiet_NaN());
    EXPECT_THAT(refusal(question), HasSubstr("no number"));

    question = random_question(3);
    question.slides.pop_back();
    EXPECT_THAT(refusal(question), HasSubstr("give a position for each"));
}

TEST(SettingsRefusals, NameTheNote) {
    SettingsQuestion question = random_question(3);
    question.notes[0].weight = -1.0;
    EXPECT_THAT(refusal(question),
                AllOf(HasSubstr("weight"), HasSubstr(units::file_name(question.notes[0].note))));

    question = random_question(3);
    question.notes[1].ways.clear();
    EXPECT_THAT(refusal(question),
                AllOf(HasSubstr("no fingering"), HasSubstr(units::file_name(question.notes[1].note))));

    question = random_question(3);
    question.notes.clear();
    EXPECT_THAT(refusal(question), HasSubstr("no notes"));

    question = random_question(3);
    for (QuestionNote& note : question.notes)
        note.weight = 0.0;
    EXPECT_THAT(refusal(question), HasSubstr("above zero"));

    question = random_question(3);
    question.covariance = {1.0, 2.0};
    EXPECT_THAT(refusal(question), HasSubstr("covariance"));
}

TEST(SettingsRefusals, ASlidePushedBeyondItsLeastIsNoMistake) {
    SettingsQuestion question = random_question(3);
    question.slides[0].now = Millimetres(0.0);
    EXPECT_EQ(refusal(question), "not refused");
}

TEST(SettingsRefusals, AllSlidesFixedIsAnAnswer) {
    SettingsQuestion question = random_question(3);
    for (QuestionSlide& slide : question.slides)
        slide.fixed = true;
    const SlideSettings settings = recommend(question);
    EXPECT_FALSE(settings.anything_moves());
    for (const SlideAnswer& slide : settings.slides) {
        EXPECT_EQ(slide.advice, Advice::fixed);
        EXPECT_EQ(slide.recommended, slide.now);
    }
    EXPECT_EQ(settings.objective_before, settings.objective_after);
}

}  // namespace
}  // namespace lowledger::tuning
