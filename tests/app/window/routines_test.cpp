#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <wx/dialog.h>

#include "app/desk/places.h"
#include "tests/app/window/in_dialog.h"
#include "tests/app/window/window_harness.h"

namespace lowledger::window {
namespace {

using testing::HasSubstr;
using testing::SizeIs;

TEST(Window, ARoutineIsGivenAndTakenBackByKeys) {
    WindowHarness window;
    const auto ada = open_ada(window);
    window.press('4', wxMOD_CONTROL);
    EXPECT_EQ(desk::section_of(window.desk().view()), desk::Section::routines);
    EXPECT_THAT(window.shown_text(), HasSubstr("What a student is to practise at home stands here"));
    const InDialog as_it_stands([](wxDialog&) {});
    window.press('A', wxMOD_CONTROL | wxMOD_SHIFT);
    const auto given = window.desk().file().assignments(ada);
    ASSERT_THAT(given, SizeIs(1));
    EXPECT_EQ(given.front().student, ada);
    window.press('Z', wxMOD_CONTROL);
    EXPECT_THAT(window.desk().file().assignments(ada), SizeIs(0));
    window.press('Z', wxMOD_CONTROL | wxMOD_SHIFT);
    EXPECT_THAT(window.desk().file().assignments(ada), SizeIs(1));
}

TEST(Window, TheLibraryOfRoutinesIsFoundAndReadByKeys) {
    WindowHarness window;
    open_ada(window);
    window.press('4', wxMOD_ALT);
    EXPECT_EQ(window.desk().view().place, desk::Place::routines);
    EXPECT_THAT(window.shown_text(), HasSubstr("Choose a routine from the list"));
    window.press('F', wxMOD_CONTROL);
    window.type("even scale");
    window.press(WXK_RETURN);
    const auto open = window.desk().view().routine;
    ASSERT_TRUE(open);
    EXPECT_EQ(window.desk().file().routine(*open)->title, "An even scale");
    const auto text = window.shown_text();
    EXPECT_THAT(text, HasSubstr("Mark the note that stands out"));
    EXPECT_THAT(text, HasSubstr("Who has it now"));
}

}  // namespace
}  // namespace lowledger::window
