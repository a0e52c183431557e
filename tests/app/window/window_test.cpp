#include <clocale>
#include <cstdlib>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>
#include <wx/app.h>
#include <wx/evtloop.h>
#include <wx/init.h>
#include <wx/log.h>
#include <wx/textctrl.h>

#include "app/desk/action.h"
#include "app/window/text.h"
#include "model/studio/questions.h"
#include "reports/words/names.h"
#include "reports/words/tuning_words.h"
#include "tests/app/window/window_harness.h"

namespace lowledger::window {
namespace {

using testing::HasSubstr;
using testing::SizeIs;

/// Puts the focus where a sheet begins.
void begin_typing(WindowHarness& window) {
    window.find("reading 0 1")->SetFocus();
    window.settle();
}

std::vector<std::string> two_rounds(std::size_t rows) {
    std::vector<std::string> typed;
    for (std::size_t i = 0; i < 2 * rows; ++i)
        typed.push_back("+" + std::to_string(20 + static_cast<int>(i % 5)));
    return typed;
}

TEST(Window, AStudioWithoutStudentsSaysWhatToDo) {
    WindowHarness window;
    EXPECT_THAT(window.shown_text(), HasSubstr("A studio keeps your students"));
    window.desk().create({window.folder() / "new.lowledger", {}});
    window.settle();
    EXPECT_THAT(window.shown_text(), HasSubstr("Your students stand here"));
}

TEST(Window, AWholeSheetIsTypedByKeyboardAndFiledAsTyped) {
    WindowHarness window;
    const auto ada = open_ada(window);
    begin_typing(window);
    const std::size_t rows = window.desk().entry()->rows().size();
    const auto typed = two_rounds(rows);
    for (const auto& value : typed) {
        window.type(value);
        window.press(WXK_RETURN);
    }
    const auto sheets = window.desk().file().sheets(ada);
    ASSERT_THAT(sheets, SizeIs(1));
    ASSERT_THAT(sheets.front().readings, SizeIs(2 * rows));
    for (std::size_t i = 0; i < typed.size(); ++i) {
        const auto& reading = sheets.front().readings[i];
        EXPECT_EQ("+" + std::to_string(static_cast<int>(reading.cents.value())), typed[i]);
        EXPECT_EQ(reading.take, i < rows ? 1 : 2);
        const auto name = wxString::Format("reading %zu %d", i % rows, i < rows ? 1 : 2);
        EXPECT_EQ(window.text_of(name), typed[i]);
    }
    // After the second time round a third begins, and the focus is there.
    EXPECT_EQ(wxWindow::FindFocus(), window.find("reading 0 3"));
}

TEST(Window, TheScreenSaysWhatTheJsonSays) {
    WindowHarness window;
    open_ada(window);
    begin_typing(window);
    for (const auto& value : two_rounds(window.desk().entry()->rows().size())) {
        window.type(value);
        window.press(WXK_RETURN);
    }
    window.desk().give_out();
    window.settle();
    const auto given = window.desk().file().given_settings(*window.desk().view().student);
    ASSERT_THAT(given, SizeIs(1));
    const auto json = nlohmann::json::parse(given.front().json);
    const std::string screen = window.shown_text();
    const auto& live = *window.desk().answer().answer;
    int moves = 0;
    for (const auto& slide : json.at("slides")) {
        const auto id = slide.at("slide").get<std::string>();
        const auto* const answer =
            std::ranges::find(live.settings.slides, id, &tuning::SlideAnswer::slide).base();
        EXPECT_EQ(slide.at("recommended_mm").get<double>(), answer->recommended.value());
        if (slide.at("advice") != "move") continue;
        ++moves;
        // A line break may stand between any two words of the drawn sentence.
        const auto position = std::to_string(static_cast<int>(slide.at("recommended_mm").get<double>()));
        EXPECT_THAT(screen, HasSubstr(position + "\u00a0mm")) << id;
    }
    EXPECT_GT(moves, 0);
}

TEST(Window, UndoInAFieldRestoresItsTextAndThenTakesBackTheEdit) {
    WindowHarness window;
    const auto ada = open_ada(window);
    begin_typing(window);
    window.type("+12");
    window.press(WXK_RETURN);
    window.press(WXK_UP);
    window.type("99");
    ASSERT_EQ(window.text_of("reading 0 1"), "99");
    window.press('Z', wxMOD_CONTROL);
    EXPECT_EQ(window.text_of("reading 0 1"), "+12");
    EXPECT_THAT(window.desk().file().sheets(ada), SizeIs(1));
    window.press('Z', wxMOD_CONTROL);
    EXPECT_THAT(window.desk().file().sheets(ada), SizeIs(0));
    EXPECT_EQ(window.text_of("reading 0 1"), "");
    window.press('Z', wxMOD_CONTROL | wxMOD_SHIFT);
    EXPECT_EQ(window.text_of("reading 0 1"), "+12");
}

TEST(Window, ATextThatIsNoNumberIsSaidAndNotFiled) {
    WindowHarness window;
    const auto ada = open_ada(window);
    begin_typing(window);
    window.type("700");
    window.press(WXK_RETURN);
    EXPECT_EQ(wxWindow::FindFocus(), window.find("reading 0 1"));
    EXPECT_THAT(window.shown_text(), HasSubstr("more than a semitone"));
    EXPECT_TRUE(window.desk().file().sheets(ada).empty());
    window.press(WXK_ESCAPE);
    EXPECT_EQ(window.text_of("reading 0 1"), "");
}

TEST(Window, SettingsSayThatSlidesMayStay) {
    WindowHarness window;
    open_ada(window);
    begin_typing(window);
    for (std::size_t i = 0; i < 2 * window.desk().entry()->rows().size(); ++i) {
        window.type("0");
        window.press(WXK_RETURN);
    }
    window.press('3', wxMOD_CONTROL);
    EXPECT_FALSE(window.desk().answer().something_moves());
    EXPECT_THAT(window.shown_text(), HasSubstr("may stay where they are"));
}

TEST(Window, AnOpenedStudioWaitsForANameToFind) {
    WindowHarness window;
    open_ada(window);
    const auto path = window.desk().file().path();
    window.desk().open(path);
    window.settle();
    window.press('2', wxMOD_ALT);
    window.press('F', wxMOD_CONTROL);
    window.type("Ad");
    window.press(WXK_DOWN);
    ASSERT_TRUE(window.desk().student());
    EXPECT_EQ(window.desk().student()->name, "Ada Example");
}

TEST(Window, KeysOfActionsReachThemFromAList) {
    WindowHarness window;
    const auto ada = open_ada(window);
    window.press('2', wxMOD_ALT);
    window.press(WXK_DOWN);
    ASSERT_NE(dynamic_cast<wxDataViewCtrl*>(wxWindow::FindFocus()), nullptr);
    // The toolkit's lists would search by this key themselves.
    window.press('F', wxMOD_CONTROL);
    EXPECT_NE(dynamic_cast<wxTextCtrl*>(wxWindow::FindFocus()), nullptr);
    EXPECT_EQ(window.desk().view().student, ada);
}

TEST(Window, KeysGoToPlacesSectionsAndBack) {
    WindowHarness window;
    const auto ada = open_ada(window);
    window.press('3', wxMOD_ALT);
    EXPECT_EQ(window.desk().view().place, desk::Place::horns);
    window.press(WXK_LEFT, wxMOD_ALT);
    EXPECT_EQ(window.desk().view().student, ada);
    window.press('3', wxMOD_CONTROL);
    EXPECT_EQ(window.desk().view().section, desk::Section::settings);
    EXPECT_THAT(window.shown_text(), HasSubstr("Slide settings come out of a tuning sheet"));
    window.press('2', wxMOD_CONTROL);
    EXPECT_EQ(wxWindow::FindFocus(), window.find("reading 0 1"));
}

TEST(Window, AChartFindsANoteThatIsTypedAndShowsItsWays) {
    WindowHarness window;
    open_ada(window);
    const auto tuba = window.desk().horn()->id;
    window.desk().go({.place = desk::Place::horns, .horn = tuba});
    window.settle();
    window.press('3', wxMOD_CONTROL);
    ASSERT_EQ(wxWindow::FindFocus(), window.find("find note"));
    window.type("D3");
    window.press(WXK_RETURN);
    EXPECT_EQ(window.desk().horn_chart()->chart().note(), *units::parse_pitch("D3"));
    EXPECT_THAT(window.shown_text(), HasSubstr("Ways to play D3"));
    window.press(WXK_UP);
    EXPECT_THAT(window.shown_text(), HasSubstr("Ways to play E♭3"));
    EXPECT_EQ(window.find("chart table"), nullptr);
    window.press('L', wxMOD_CONTROL);
    EXPECT_NE(window.find("chart table"), nullptr);
}

TEST(Window, ATransposingReadersSheetSpeaksTheirPitchAndSaysTheTuners) {
    WindowHarness window;
    const auto ada = open_ada(window);
    window.desk().file().edit("reads treble", [&](store::Edit& edit) {
        auto student = *window.desk().file().student(ada);
        student.reader = "treble-b-flat";
        edit.update(student);
    });
    window.settle();
    // The first row is the open note of the horn: written C, sounding B flat.
    const auto text = window.shown_text();
    EXPECT_THAT(text, HasSubstr("C5"));
    EXPECT_THAT(text, HasSubstr("tuner"));
}

TEST(Window, TheTeachersHandIsAnsweredWhileTyping) {
    WindowHarness window;
    open_ada(window);
    begin_typing(window);
    for (const auto& value : two_rounds(window.desk().entry()->rows().size())) {
        window.type(value);
        window.press(WXK_RETURN);
    }
    window.press('3', wxMOD_CONTROL);
    ASSERT_TRUE(window.desk().answer().something_moves());
    window.press('E', wxMOD_CONTROL);
    auto* const travel = window.find("hand travel main");
    ASSERT_NE(travel, nullptr);
    travel->SetFocus();
    window.settle();
    window.type("26");
    const auto& hand = window.desk().hand();
    EXPECT_EQ(hand.travel.at("main"), units::Millimetres(26));
    const auto& slides = window.desk().answer().answer->settings.slides;
    EXPECT_LE(std::ranges::find(slides, "main", &tuning::SlideAnswer::slide)->recommended,
              units::Millimetres(26));
    window.type("x");
    EXPECT_EQ(window.desk().hand().travel.at("main"), units::Millimetres(26));
    EXPECT_THAT(window.shown_text(), HasSubstr("26x"));
}

}  // namespace
}  // namespace lowledger::window

int main(int argc, char** argv) {
    testing::InitGoogleTest(&argc, argv);
    // Listing the tests needs no display.
    if (testing::GTEST_FLAG(list_tests)) return RUN_ALL_TESTS();
    // Labels hold letters beyond ASCII, which the toolkit reads as the locale writes them.
    setenv("LC_ALL", "C.UTF-8", 1);
    std::setlocale(LC_ALL, "C.UTF-8");
    wxApp::SetInstance(new wxApp);
    if (!wxEntryStart(argc, argv)) return 1;
    delete wxLog::SetActiveTarget(new wxLogStderr);
    // What the toolkit finds amiss would otherwise wait in a dialog for an answer.
    wxSetAssertHandler([](const wxString& file, int line, const wxString& /*function*/, const wxString& claim,
                          const wxString& message) {
        ADD_FAILURE() << file << ":" << line << ": " << claim << " " << message;
    });
    wxTheApp->SetAppName("lowledger-test");
    wxTheApp->SetExitOnFrameDelete(false);
    wxEventLoop loop;
    const wxEventLoopActivator active(&loop);
    const int result = RUN_ALL_TESTS();
    wxEntryCleanup();
    return result;
}
