#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>

#include "app/desk/action.h"
#include "tests/app/window/in_dialog.h"
#include "tests/app/window/window_harness.h"

namespace lowledger::window {
namespace {

using testing::HasSubstr;
using testing::SizeIs;

TEST(SectionPass, IsTypedByKeyboardAloneAndItsSheetsFileThemselves) {
    WindowHarness window;
    const auto ada = open_ada(window);
    std::string said;
    const InDialog typing([&](wxDialog& /*dialog*/) {
        window.settle();
        window.type("+12");
        window.press(WXK_RETURN);
        window.type("x");
        window.press(WXK_RETURN);
        said = window.shown_text();
        EXPECT_EQ(wxWindow::FindFocus(), window.find("pass 0 1"));
        window.press(WXK_ESCAPE);
        EXPECT_EQ(window.text_of("pass 0 1"), "");
        window.press(WXK_TAB);
        window.type("-7");
        window.press(WXK_RETURN);
        window.press(WXK_RETURN);
    });
    desk::action("pass.type").run(window.desk());
    window.settle();
    EXPECT_THAT(said, HasSubstr("F: \"x\" is not"));
    const auto sheets = window.desk().file().sheets(ada);
    ASSERT_THAT(sheets, SizeIs(1));
    ASSERT_THAT(sheets.front().readings, SizeIs(2));
    EXPECT_EQ(sheets.front().readings[0].cents, units::Cents(12));
    EXPECT_EQ(sheets.front().readings[1].cents, units::Cents(-7));
    window.press('Z', wxMOD_CONTROL);
    EXPECT_THAT(window.desk().file().sheets(ada), SizeIs(0));
}

TEST(SectionPass, EscapeFilesToo) {
    WindowHarness window;
    const auto ada = open_ada(window);
    const InDialog typing([&](wxDialog& /*dialog*/) {
        window.settle();
        window.type("+9");
        window.press(WXK_RETURN);
        window.press(WXK_ESCAPE);
    });
    desk::action("pass.type").run(window.desk());
    window.settle();
    EXPECT_THAT(window.desk().file().sheets(ada), SizeIs(1));
}

}  // namespace
}  // namespace lowledger::window
