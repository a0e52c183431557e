#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "app/desk/action.h"
#include "app/desk/places.h"
#include "app/window/listing_view.h"
#include "tests/app/window/in_dialog.h"
#include "tests/app/window/window_harness.h"

namespace lowledger::window {
namespace {

using testing::HasSubstr;

TEST(FindAnything, AnswersWhileOneTypesAndEnterGoesThere) {
    WindowHarness window;
    open_ada(window);
    const auto tuba = window.desk().horn()->id;
    window.desk().file().edit("upkeep", [&](store::Edit& edit) {
        studio::Upkeep work{.id = {}, .horn = tuba, .noted_on = studio::Date(2026, 11, 2)};
        // No routine of the library has a word that begins so.
        work.what = "xenon lamp fell on the bell";
        edit.add(work);
    });
    window.settle();
    unsigned with_one_letter = 0;
    std::string nothing;
    const InDialog finding([&](wxDialog& /*dialog*/) {
        window.settle();
        window.type("zz");
        nothing = window.shown_text();
        window.press('A', wxMOD_CONTROL);
        window.type("x");
        with_one_letter = dynamic_cast<ListingView*>(window.find("found"))->rows();
        window.type("enon");
        window.press(WXK_RETURN);
    });
    window.press('F', wxMOD_CONTROL | wxMOD_SHIFT);
    window.settle();
    EXPECT_THAT(nothing, HasSubstr("Nothing here"));
    EXPECT_EQ(with_one_letter, 1U);
    EXPECT_EQ(window.desk().view().place, desk::Place::horns);
    EXPECT_EQ(desk::section_of(window.desk().view()), desk::Section::upkeep);
}

}  // namespace
}  // namespace lowledger::window
