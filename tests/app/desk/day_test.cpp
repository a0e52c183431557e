#include "app/desk/day.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "app/desk/action.h"
#include "app/desk/last_time.h"
#include "app/desk/lessons.h"
#include "app/desk/note_names.h"
#include "app/desk/places.h"
#include "app/desk/sheet_history.h"
#include "app/desk/student_history.h"
#include "reports/words/names.h"
#include "tests/app/desk/prepared_studio.h"

namespace lowledger::desk {
namespace {

using studio::Lesson;
using testing::HasSubstr;
using testing::SizeIs;
using Texts = std::map<std::string, std::string>;

std::string text_of(const std::vector<BriefPart>& parts) {
    std::string text;
    for (const auto& part : parts) {
        text += part.heading + "\n";
        for (const auto& line : part.lines)
            text += line + "\n";
    }
    return text;
}

Day today_of(const PreparedStudio& studio) {
    return day_of(studio.desk->file(), studio.desk->words(), test_day, test_day);
}

TEST(Today, HoldsTheDaysLessonsAndWhatIsOwed) {
    PreparedStudio studio;
    const auto day = today_of(studio);
    ASSERT_THAT(day.lessons, SizeIs(1));
    EXPECT_EQ(day.lessons[0].time, "15:30 to 16:00");
    EXPECT_EQ(day.lessons[0].who, "Ben Beispiel");
    EXPECT_EQ(day.lessons[0].state, "planned");
    EXPECT_EQ(day.lessons[0].room, "2");
    ASSERT_THAT(day.due, SizeIs(1));
    EXPECT_EQ(day.due[0].what, "Make-up lesson to arrange");
    EXPECT_EQ(day.due[0].opens.student, studio.ben);
    EXPECT_EQ(day_title(studio.desk->words(), test_day), "Wednesday, 25 November 2026");
}

TEST(Today, SaysWhatWasToldLastTimeWhatClashesAndWhoseSheetIsDue) {
    PreparedStudio studio;
    studio.desk->file().edit("lessons", [&](store::Edit& edit) {
        edit.add(Lesson{.id = {},
                        .student = studio.ada,
                        .on = test_day - 7,
                        .starts = studio::TimeOfDay(9, 0),
                        .state = Lesson::State::kept,
                        .done = "long tones",
                        .next = "page 12"});
        edit.add(
            Lesson{.id = {}, .student = studio.ada, .on = test_day, .starts = studio::TimeOfDay(15, 45)});
    });
    const auto day = today_of(studio);
    ASSERT_THAT(day.lessons, SizeIs(2));
    EXPECT_THAT(day.lessons[0].state, HasSubstr("at the same time as Ada Example"));
    EXPECT_EQ(day.lessons[1].horn, "T-1");
    EXPECT_EQ(day.lessons[1].sheet, "none yet");
    EXPECT_THAT(text_of(day.lessons[1].brief), HasSubstr("Done: long tones"));
    EXPECT_THAT(text_of(day.lessons[1].brief), HasSubstr("Next: page 12"));
    studio.desk->go({.place = Place::students, .student = studio.ada});
    EXPECT_THAT(text_of(last_time(*studio.desk)), HasSubstr("Next: page 12"));
    const auto history = student_history(*studio.desk);
    EXPECT_EQ(std::ranges::count(history, "Lesson", &HistoryItem::what), 2);
    EXPECT_EQ(history.front().on, test_day);
}

TEST(Today, KeysTurnToOtherDaysAndBack) {
    PreparedStudio studio;
    auto& desk = *studio.desk;
    desk.go({.place = Place::today});
    ASSERT_TRUE(desk.lesson());
    action("day.after").run(desk);
    EXPECT_EQ(desk.view().day, test_day + 1);
    EXPECT_FALSE(desk.lesson());
    action("day.before").run(desk);
    EXPECT_FALSE(desk.view().day);
    studio.front.slip.emplace();
    (*studio.front.slip)["on"] = "2028-02-29";
    action("day.choose").run(desk);
    EXPECT_EQ(desk.view().day, studio::Date(2028, 2, 29));
    action("go.today").run(desk);
    EXPECT_FALSE(desk.view().day);
}

TEST(Lessons, BeginningOpensTheDaysLessonAndPlansOneWhereNoneStands) {
    PreparedStudio studio;
    auto& desk = *studio.desk;
    desk.go({.place = Place::students, .student = studio.ben});
    const auto before = studio.dump();
    action("lesson.begin").run(desk);
    EXPECT_EQ(studio.dump(), before);
    EXPECT_EQ(section_of(desk.view()), Section::lesson_note);
    desk.go({.place = Place::students, .student = studio.ada});
    EXPECT_FALSE(desk.lesson());
    action("lesson.begin").run(desk);
    ASSERT_TRUE(desk.lesson());
    EXPECT_EQ(desk.lesson()->student, studio.ada);
    EXPECT_EQ(desk.lesson()->starts, studio::TimeOfDay(15, 0));
}

TEST(Lessons, ANoteIsOneStepAndSaysThatTheLessonWasKept) {
    PreparedStudio studio;
    auto& desk = *studio.desk;
    desk.go({.place = Place::students, .student = studio.ben});
    const auto lesson = desk.lesson()->id;
    const auto before = studio.dump();
    file_text(desk, lesson, LessonText::done, "scales");
    EXPECT_EQ(desk.lesson()->state, Lesson::State::kept);
    EXPECT_EQ(desk.file().undo_name(), "What was done with Ben Beispiel");
    file_text(desk, lesson, LessonText::remark, "tired");
    file_text(desk, lesson, LessonText::remark, "tired");
    desk.file().undo();
    desk.file().undo();
    EXPECT_EQ(studio.dump(), before);
}

TEST(Lessons, AMakeUpIsOwedAndSettledByOneThatIsKept) {
    PreparedStudio studio;
    auto& desk = *studio.desk;
    desk.go({.place = Place::students, .student = studio.ben});
    studio.front.slip = Texts{{"on", test_day.iso()}, {"time", "1700"}};
    action("lesson.make_up").run(desk);
    EXPECT_FALSE(action("lesson.make_up").may_run(desk));
    EXPECT_THAT(today_of(studio).due.at(0).what, HasSubstr("Make-up lesson on 25 November 2026"));
    const auto lessons = desk.file().lessons(test_day, test_day);
    ASSERT_THAT(lessons, SizeIs(2));
    desk.go({.place = Place::today, .lesson = lessons.back().id});
    action("lesson.kept").run(desk);
    EXPECT_TRUE(today_of(studio).due.empty());
}

TEST(Lessons, AWrongTimeIsSaidAndNothingIsMoved) {
    PreparedStudio studio;
    auto& desk = *studio.desk;
    desk.go({.place = Place::today});
    studio.front.slip = Texts{{"time", std::string("noon")}};
    const auto before = studio.dump();
    action("lesson.move").run(desk);
    EXPECT_EQ(studio.dump(), before);
    EXPECT_THAT(studio.front.said, HasSubstr("as in 15:30"));
}

TEST(Lessons, OfAGroupsLessonOneSaysOnTodayWhoCameAndOnAPageWhetherOneDid) {
    PreparedStudio studio;
    auto& desk = *studio.desk;
    studio::LessonId lesson;
    desk.file().edit("group", [&](store::Edit& edit) {
        const auto group =
            edit.add(studio::Group{.id = {},
                                   .name = "Low four",
                                   .members = {{studio.ada, test_day - 30}, {studio.ben, test_day - 30}}});
        lesson =
            edit.add(Lesson{.id = {}, .group = group, .on = test_day, .starts = studio::TimeOfDay(10, 0)});
    });
    desk.go({.place = Place::students, .student = studio.ada, .lesson = lesson});
    action("lesson.no_notice").run(desk);
    EXPECT_EQ(desk.lesson()->state, Lesson::State::planned);
    desk.go({.place = Place::today, .lesson = lesson});
    action("lesson.kept").run(desk);
    EXPECT_EQ(desk.lesson()->state, Lesson::State::kept);
    EXPECT_EQ(outcome_of(*desk.lesson(), studio.ada), "no notice");
    EXPECT_EQ(outcome_of(*desk.lesson(), studio.ben), "kept");
    studio.front.slip = Texts{{"student", std::to_string(studio.ben.number)}};
    action("lesson.begin").run(desk);
    EXPECT_EQ(desk.view().student, studio.ben);
    EXPECT_EQ(section_of(desk.view()), Section::last_time);
}

TEST(Lessons, AttendanceOfAWholeGroupIsOneStepAndIsToldOnTodayAndInEachHistory) {
    PreparedStudio studio;
    auto& desk = *studio.desk;
    desk.go({.place = Place::today, .lesson = studio.add_group_lesson()});
    const auto before = studio.dump();
    studio.front.slip = Texts{{std::to_string(studio.ben.number), "no notice"}};
    action("lesson.attendance").run(desk);
    EXPECT_EQ(desk.lesson()->state, Lesson::State::kept);
    EXPECT_EQ(today_of(studio).lessons[0].state, "kept · 1 of 2 there");
    desk.go({.place = Place::students, .student = studio.ben});
    const auto history = student_history(desk);
    EXPECT_TRUE(std::ranges::any_of(
        history, [](const auto& item) { return item.details == "Low four · missed without notice"; }));
    desk.file().undo();
    EXPECT_EQ(studio.dump(), before);
}

TEST(SheetsOverTime, AllStandInTheListAndInOnePictureAndTwoBesideEachOther) {
    PreparedStudio studio;
    auto& desk = *studio.desk;
    studio.turn_to_ada();
    ASSERT_FALSE(desk.sheets().empty());
    auto older = desk.sheets().front();
    older.on = test_day - 30;
    older.warm = false;
    for (auto& reading : older.readings)
        reading.cents = units::Cents(-21.0);
    desk.file().edit("older", [&](store::Edit& edit) { edit.add(older); });
    studio.turn_to_ada();
    const auto listing = sheets_listing(desk);
    ASSERT_THAT(listing.rows, SizeIs(2));
    EXPECT_EQ(listing.rows.back().cells[0].text, "26 October 2026");
    EXPECT_EQ(listing.rows.back().cells[2].text, words::cents_text(units::Cents(-21.0)));
    EXPECT_EQ(listing.rows.back().cells[3].text, "cold");
    const engraving::Engraver engraver(studio.front.faces(), units::Millimetres(1.5));
    const PictureTools tools{engraver, desk.words(), note_style(desk)};
    const units::Millimetres width(200.0);
    const auto over_time = sheets_picture(tools, desk, {}, width);
    EXPECT_THAT(over_time.content,
                HasSubstr("26 October 2026 " + words::cents_text(units::Cents(-21.0)) + ";"));
    const auto beside = sheets_picture(tools, desk, {listing.rows[0].id, listing.rows[1].id}, width);
    EXPECT_EQ(beside.content, over_time.content);
    EXPECT_NE(beside.page.items, over_time.page.items);
    open_sheet(desk, studio::TuningSheetId{listing.rows.back().id});
    EXPECT_EQ(desk.entry()->sheet().on, test_day - 30);
}

}  // namespace
}  // namespace lowledger::desk
