#include <filesystem>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <iostream>
#include <string>
#include <vector>
#include <wx/filedlg.h>
#include <wx/modalhook.h>

#include "app/window/preview.h"
#include "model/studio/questions.h"
#include "tests/app/window/window_harness.h"

namespace lowledger::window {
namespace {

using studio::Lesson;
using testing::HasSubstr;
using testing::Not;
using testing::SizeIs;

const studio::Date today{2026, 11, 25};
/// Besides the letters and figures of texts and numbers; a key held while another is pressed is one too.
constexpr int most_keys_of_a_lesson = 50;

/// Whoever sits at the keyboard: counts the keys that are neither text nor number.
class Teacher : public wxModalDialogHook {
  public:
    explicit Teacher(WindowHarness& window) : window_(window) { Register(); }
    ~Teacher() override { Unregister(); }
    Teacher(const Teacher&) = delete;
    Teacher& operator=(const Teacher&) = delete;

    void press(int key, int modifiers = 0) {
        keys_ += 1 + ((modifiers & wxMOD_CONTROL) != 0 ? 1 : 0) + ((modifiers & wxMOD_ALT) != 0 ? 1 : 0) +
                 ((modifiers & wxMOD_SHIFT) != 0 ? 1 : 0);
        window_.press(key, modifiers);
    }
    void type(const std::string& text) { window_.type(text); }
    [[nodiscard]] int keys() const { return keys_; }
    void count_anew() { keys_ = 0; }
    [[nodiscard]] const std::vector<std::filesystem::path>& saved() const { return saved_; }

  protected:
    int Enter(wxDialog* dialog) override {
        if (dynamic_cast<wxFileDialog*>(dialog) != nullptr) {
            // The system's own dialog, taken by Enter with the name that it offers.
            ++keys_;
            saved_.push_back(window_.folder() / ("handout " + std::to_string(saved_.size()) + ".pdf"));
            preview_->save_as(saved_.back());
            return wxID_CANCEL;
        }
        preview_ = dynamic_cast<Preview*>(dialog);
        dialog->CallAfter([this, is_preview = preview_ != nullptr] {
            window_.settle();
            if (is_preview) {
                press(WXK_TAB);
                press(WXK_SPACE);
                press(WXK_ESCAPE);
            } else {
                press(WXK_RETURN);
            }
        });
        return wxID_NONE;
    }

  private:
    WindowHarness& window_;
    Preview* preview_ = nullptr;
    int keys_ = 0;
    std::vector<std::filesystem::path> saved_;
};

struct Pupil {
    studio::StudentId id;
    std::string name;
    studio::LessonId lesson;
};

/// Three students, each on a measured tuba of their own, with a lesson today; the second has the horn at home
/// and it was to be back.
std::vector<Pupil> prepare(WindowHarness& window) {
    std::vector<Pupil> pupils{
        {open_ada(window), "Ada Example", {}}, {{}, "Ben Beispiel", {}}, {{}, "Cem", {}}};
    window.desk().file().edit("prepare", [&](store::Edit& edit) {
        const auto* kind = horns::find_kind(horns::built_in_kinds(), "bbb-tuba-3");
        for (std::size_t i = 0; i < pupils.size(); ++i) {
            auto& pupil = pupils[i];
            if (i != 0) {
                studio::Student student;
                student.name = pupil.name;
                pupil.id = edit.add(student);
                auto horn = studio::horn_of(*kind);
                horn.mark = "T-" + std::to_string(i + 1);
                const auto tuba = edit.add(horn);
                for (auto position : studio::designed_positions(*kind, tuba, studio::Date(2026, 9, 7))) {
                    position.origin = studio::SlidePosition::Origin::measured;
                    edit.add(position);
                }
                edit.add(studio::HornUse{
                    .id = {}, .student = pupil.id, .horn = tuba, .from = studio::Date(2026, 9, 7)});
                if (i == 1)
                    edit.add(studio::Loan{.id = {},
                                          .horn = tuba,
                                          .student = pupil.id,
                                          .from = studio::Date(2026, 9, 7),
                                          .due = today - 5});
            }
            edit.add(Lesson{.id = {},
                            .student = pupil.id,
                            .on = today - 7,
                            .state = Lesson::State::kept,
                            .done = "long tones",
                            .next = "page 12 for " + pupil.name});
            pupil.lesson = edit.add(Lesson{.id = {},
                                           .student = pupil.id,
                                           .on = today,
                                           .starts = studio::TimeOfDay(15 + static_cast<int>(i), 0)});
        }
    });
    window.settle();
    return pupils;
}

/// Seven readings twice, as they would be typed.
std::vector<std::string> readings(std::size_t rows, std::size_t pupil) {
    std::vector<std::string> typed;
    for (std::size_t i = 0; i < 2 * rows; ++i)
        typed.push_back("+" + std::to_string(18 + static_cast<int>((i + 3 * pupil) % 6)));
    return typed;
}

void give_lesson(WindowHarness& window, Teacher& teacher, const Pupil& pupil, std::size_t number) {
    teacher.press('1', wxMOD_ALT);
    // The next lesson that is still to come stands chosen.
    EXPECT_THAT(window.shown_text(), HasSubstr("Next: page 12 for " + pupil.name));
    teacher.press(WXK_RETURN);
    ASSERT_EQ(window.desk().view().student, pupil.id);
    EXPECT_THAT(window.shown_text(), HasSubstr("Done: long tones"));
    teacher.press('2', wxMOD_CONTROL);
    for (const auto& value : readings(window.desk().entry()->rows().size(), number)) {
        teacher.type(value);
        teacher.press(WXK_RETURN);
    }
    teacher.press('3', wxMOD_CONTROL);
    EXPECT_THAT(window.shown_text(), HasSubstr("Main slide"));
    ASSERT_TRUE(window.desk().answer().something_moves());
    teacher.press('P', wxMOD_CONTROL);
    teacher.press('D', wxMOD_CONTROL);
    teacher.press(WXK_F5);
    teacher.type("scales in thirds");
    teacher.press(WXK_RETURN);
    teacher.type("slurs");
    teacher.press(WXK_RETURN, wxMOD_CONTROL);
}

void expect_lesson_in_file(const desk::Desk& desk, const Pupil& pupil, std::size_t number) {
    const auto sheets = desk.file().sheets(pupil.id);
    ASSERT_THAT(sheets, SizeIs(1)) << pupil.name;
    const auto typed = readings(sheets.front().readings.size() / 2, number);
    for (std::size_t i = 0; i < typed.size(); ++i)
        EXPECT_EQ("+" + std::to_string(static_cast<int>(sheets.front().readings[i].cents.value())), typed[i]);
    const auto given = desk.file().given_settings(pupil.id);
    ASSERT_THAT(given, SizeIs(1));
    EXPECT_EQ(given.front().moved_on, today);
    const auto lesson = desk.file().lesson(pupil.lesson);
    EXPECT_EQ(lesson->state, Lesson::State::kept);
    EXPECT_EQ(lesson->done, "scales in thirds\nslurs");
}

/// Takes back step by step until the file is as it was, and does it all again.
void undo_and_redo(WindowHarness& window, Teacher& teacher, const std::string& before) {
    constexpr int most_steps = 60;
    const std::string after = window.desk().file().dump();
    teacher.press('1', wxMOD_ALT);
    int steps = 0;
    while (steps < most_steps && window.desk().file().dump() != before) {
        teacher.press('Z', wxMOD_CONTROL);
        ++steps;
    }
    ASSERT_EQ(window.desk().file().dump(), before);
    for (int i = 0; i < steps; ++i)
        teacher.press('Z', wxMOD_CONTROL | wxMOD_SHIFT);
    EXPECT_EQ(window.desk().file().dump(), after);
}

TEST(TeachingDay, ThreeLessonsAndALoanByKeyboardAloneUndoneRedoneAndThereAgain) {
    WindowHarness window;
    const auto pupils = prepare(window);
    const auto path = window.desk().file().path();
    window.desk().open(path);
    window.settle();
    Teacher teacher(window);
    for (std::size_t i = 0; i < pupils.size(); ++i) {
        const std::string before = window.desk().file().dump();
        teacher.count_anew();
        give_lesson(window, teacher, pupils[i], i);
        std::cout << "keys of the lesson of " << pupils[i].name
                  << " besides text and numbers: " << teacher.keys() << "\n";
        EXPECT_LE(teacher.keys(), most_keys_of_a_lesson);
        expect_lesson_in_file(window.desk(), pupils[i], i);
        undo_and_redo(window, teacher, before);
        expect_lesson_in_file(window.desk(), pupils[i], i);
    }
    ASSERT_THAT(teacher.saved(), SizeIs(pupils.size()));
    for (const auto& saved : teacher.saved())
        EXPECT_GT(std::filesystem::file_size(saved), 1000U);

    const std::string before_loan = window.desk().file().dump();
    EXPECT_THAT(window.shown_text(), HasSubstr("Horn T-2 was to be back"));
    teacher.press('3', wxMOD_ALT);
    teacher.press('F', wxMOD_CONTROL);
    teacher.type("T-2");
    teacher.press(WXK_DOWN);
    teacher.press('B', wxMOD_CONTROL | wxMOD_SHIFT);
    ASSERT_NE(window.desk().file().dump(), before_loan);
    undo_and_redo(window, teacher, before_loan);
    EXPECT_THAT(window.shown_text(), Not(HasSubstr("was to be back")));

    const std::string at_the_end = window.desk().file().dump();
    window.desk().open(path);
    window.settle();
    EXPECT_EQ(window.desk().file().dump(), at_the_end);
    teacher.press('1', wxMOD_ALT);
    const auto shown = window.shown_text();
    for (std::size_t i = 0; i < pupils.size(); ++i) {
        EXPECT_THAT(shown, HasSubstr(pupils[i].name));
        expect_lesson_in_file(window.desk(), pupils[i], i);
    }
    EXPECT_THAT(shown, HasSubstr("kept"));
    EXPECT_THAT(shown, Not(HasSubstr("planned")));
}

}  // namespace
}  // namespace lowledger::window
