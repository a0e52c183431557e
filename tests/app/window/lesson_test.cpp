#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/app/window/window_harness.h"

namespace lowledger::window {
namespace {

using studio::Lesson;
using testing::HasSubstr;

const studio::Date today{2026, 11, 25};

studio::LessonId add_lessons(WindowHarness& window, studio::StudentId student) {
    studio::LessonId lesson;
    window.desk().file().edit("lessons", [&](store::Edit& edit) {
        edit.add(Lesson{.id = {},
                        .student = student,
                        .on = today - 7,
                        .state = Lesson::State::kept,
                        .done = "long tones",
                        .next = "page 12"});
        lesson =
            edit.add(Lesson{.id = {}, .student = student, .on = today, .starts = studio::TimeOfDay(15, 30)});
    });
    window.settle();
    return lesson;
}

TEST(LessonWindow, ALessonIsGivenByKeysAlone) {
    WindowHarness window;
    const auto ada = open_ada(window);
    const auto lesson = add_lessons(window, ada);
    window.press('1', wxMOD_ALT);
    EXPECT_THAT(window.shown_text(), HasSubstr("Wednesday, 25 November 2026"));
    EXPECT_THAT(window.shown_text(), HasSubstr("Next: page 12"));
    window.press(WXK_RETURN);
    EXPECT_EQ(window.desk().view().student, ada);
    EXPECT_EQ(window.desk().view().section, desk::Section::last_time);
    EXPECT_THAT(window.shown_text(), HasSubstr("Done: long tones"));
    window.press(WXK_F5);
    EXPECT_EQ(window.desk().view().section, desk::Section::lesson_note);
    ASSERT_EQ(wxWindow::FindFocus(), window.find("lesson done"));
    window.type("scales");
    window.press(WXK_RETURN);
    window.type("slurs");
    window.press(WXK_RETURN, wxMOD_CONTROL);
    EXPECT_EQ(window.desk().file().lesson(lesson)->done, "scales\nslurs");
    EXPECT_EQ(window.desk().file().lesson(lesson)->state, Lesson::State::kept);
    window.press(WXK_TAB);
    window.type("page 13");
    // Leaving by a key of the menu keeps what stands in the field.
    window.press('1', wxMOD_ALT);
    EXPECT_EQ(window.desk().file().lesson(lesson)->next, "page 13");
    window.press('Z', wxMOD_CONTROL);
    EXPECT_EQ(window.desk().file().lesson(lesson)->next, "");
    EXPECT_EQ(window.desk().file().lesson(lesson)->done, "scales\nslurs");
}

TEST(LessonWindow, AStudentWithoutHornHasLessonsAndAHistory) {
    WindowHarness window;
    open_ada(window);
    studio::StudentId ben;
    window.desk().file().edit("Ben", [&](store::Edit& edit) {
        studio::Student student;
        student.name = "Ben Beispiel";
        ben = edit.add(student);
    });
    window.desk().go({.place = desk::Place::students, .student = ben, .section = desk::Section::lesson_note});
    window.settle();
    EXPECT_THAT(window.shown_text(), HasSubstr("Ben has no lesson today"));
    window.press(WXK_F5);
    ASSERT_TRUE(window.desk().lesson());
    ASSERT_EQ(wxWindow::FindFocus(), window.find("lesson done"));
    window.press(WXK_F8);
    EXPECT_EQ(window.desk().lesson()->state, Lesson::State::missed_with_notice);
    EXPECT_TRUE(window.desk().lesson()->make_up_owed);
    window.press('6', wxMOD_CONTROL);
    EXPECT_NE(window.find("history"), nullptr);
    window.press('2', wxMOD_CONTROL);
    EXPECT_THAT(window.shown_text(), HasSubstr("plays no horn yet"));
}

}  // namespace
}  // namespace lowledger::window
