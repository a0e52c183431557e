#include <functional>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <wx/dialog.h>
#include <wx/toplevel.h>

#include "app/desk/places.h"
#include "tests/app/window/window_harness.h"

namespace lowledger::window {
namespace {

using testing::HasSubstr;
using testing::SizeIs;

wxDialog* shown_dialog() {
    for (wxWindow* top : wxTopLevelWindows)
        if (auto* const dialog = dynamic_cast<wxDialog*>(top); dialog != nullptr && dialog->IsShown())
            return dialog;
    return nullptr;
}

/// Does it as soon as a dialog is open and has the keys.
void when_asked(WindowHarness& window, const std::function<void()>& answer) {
    auto* const dialog = shown_dialog();
    if (dialog != nullptr && dialog->IsActive()) return answer();
    window.frame().CallAfter([&window, answer] { when_asked(window, answer); });
}

TEST(Window, ARoutineIsGivenTickedAndRenewedByKeys) {
    WindowHarness window;
    const auto ada = open_ada(window);
    window.press('4', wxMOD_CONTROL);
    EXPECT_EQ(desk::section_of(window.desk().view()), desk::Section::routines);
    EXPECT_THAT(window.shown_text(), HasSubstr("What a student is to practise at home stands here"));

    when_asked(window, [&] { window.press('G', wxMOD_ALT); });
    window.press('A', wxMOD_CONTROL | wxMOD_SHIFT);
    const auto given = window.desk().file().assignments(ada);
    ASSERT_THAT(given, SizeIs(1));
    EXPECT_EQ(given.front().student, ada);

    // Monday is the 23rd, before it was given: the first box is today's.
    when_asked(window, [&] {
        window.press(WXK_SPACE);
        window.press('E', wxMOD_ALT);
    });
    window.press('E', wxMOD_CONTROL | wxMOD_SHIFT);
    const auto practice = window.desk().file().practice(ada, given.front().from, given.front().from);
    ASSERT_THAT(practice, SizeIs(1));
    EXPECT_EQ(practice.front().assignment, given.front().id);

    window.press('Z', wxMOD_CONTROL);
    EXPECT_THAT(window.desk().file().practice(ada, given.front().from, given.front().from), SizeIs(0));
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
