#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "app/desk/action.h"
#include "tests/app/window/window_harness.h"

namespace lowledger::window {
namespace {

using studio::Date;
using testing::HasSubstr;
using testing::SizeIs;

/// A term that holds the harness's day, with Ada's lesson on Wednesdays at four.
studio::TermId add_term(WindowHarness& window, studio::StudentId ada) {
    studio::TermId term;
    window.desk().file().edit("term", [&](store::Edit& edit) {
        term = edit.add(
            studio::Term{.id = {}, .name = "Autumn", .first = Date(2026, 11, 2), .last = Date(2026, 12, 18)});
        edit.add(studio::TimetableSlot{
            .id = {}, .term = term, .student = ada, .weekday = 3, .starts = studio::TimeOfDay(16, 0)});
    });
    window.settle();
    return term;
}

/// Runs an action, types into the first field of its slip and agrees.
void answer_by_keys(WindowHarness& window, const char* id, const std::string& typed) {
    window.frame().CallAfter([&] {
        window.type(typed);
        window.press(WXK_RETURN);
    });
    desk::action(id).run(window.desk());
    window.settle();
}

TEST(TermsWindow, ATermsLessonsAreMadeAndCancelledByKeys) {
    WindowHarness window;
    const auto ada = open_ada(window);
    add_term(window, ada);
    window.press('5', wxMOD_ALT);
    EXPECT_THAT(window.shown_text(), HasSubstr("2 November 2026 to 18 December 2026"));
    EXPECT_THAT(window.shown_text(), HasSubstr("No lessons of the week clash"));
    window.press('2', wxMOD_CONTROL);
    EXPECT_THAT(window.shown_text(), HasSubstr("without the holidays"));
    EXPECT_THAT(window.shown_text(), HasSubstr("7 to make, 0 to take away"));
    // The first button offers what starts it.
    window.press(WXK_SPACE);
    EXPECT_THAT(window.desk().file().lessons(Date(2026, 11, 2), Date(2026, 12, 18)), SizeIs(7));
    EXPECT_THAT(window.shown_text(), HasSubstr("0 of 7 lessons kept"));
    // The lesson of today is turned to, and kept by its key.
    window.press(WXK_F7);
    EXPECT_THAT(window.shown_text(), HasSubstr("1 of 7 lessons kept"));
    window.press('Z', wxMOD_CONTROL);
    window.press('Z', wxMOD_CONTROL);
    EXPECT_THAT(window.desk().file().lessons(Date(2026, 11, 2), Date(2026, 12, 18)), SizeIs(0));
}

TEST(TermsWindow, AHolidayIsTypedIntoItsSlip) {
    WindowHarness window;
    const auto ada = open_ada(window);
    const auto term = add_term(window, ada);
    window.press('5', wxMOD_ALT);
    window.press('3', wxMOD_CONTROL);
    EXPECT_THAT(window.shown_text(), HasSubstr("Days of the term without lessons"));
    answer_by_keys(window, "holiday.add", "concert");
    const auto holidays = window.desk().file().term(term)->holidays;
    ASSERT_THAT(holidays, SizeIs(1));
    EXPECT_EQ(holidays.front().name, "concert");
    EXPECT_EQ(holidays.front().first, Date(2026, 11, 25));
}

TEST(TermsWindow, AStudioWithoutTermsSaysWhatTheyAreFor) {
    WindowHarness window;
    open_ada(window);
    window.press('5', wxMOD_ALT);
    EXPECT_THAT(window.shown_text(), HasSubstr("A term holds its holidays"));
}

}  // namespace
}  // namespace lowledger::window
