#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "app/desk/action.h"
#include "app/desk/lending.h"
#include "app/desk/places.h"
#include "app/desk/tables.h"
#include "app/desk/term_lists.h"
#include "model/studio/calendar.h"
#include "tests/app/desk/prepared_studio.h"

namespace lowledger::desk {
namespace {

using studio::Date;
using studio::Lesson;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;
using Texts = std::map<std::string, std::string>;

class Terms : public testing::Test {
  protected:
    Terms() {
        studio.plan_a_term();
        turn_to(Section::timetable);
    }

    void turn_to(Section section) {
        studio.desk->go({.place = Place::terms, .section = section, .term = studio.term});
    }

    void run(std::string_view id, Texts slip = {}) {
        studio.front.slip = std::move(slip);
        ASSERT_TRUE(action(id).may_run(*studio.desk)) << id;
        action(id).run(*studio.desk);
    }

    /// The slip is not taken, with that said, and nothing is filed.
    void refuse(std::string_view id, Texts slip, const std::string& said) {
        const auto before = studio.dump();
        studio.front.said.clear();
        run(id, std::move(slip));
        EXPECT_EQ(studio.dump(), before) << id;
        EXPECT_THAT(studio.front.said, HasSubstr(said));
    }

    /// The days of Ada's lessons of the desk's term.
    [[nodiscard]] std::vector<std::string> adas_days() const {
        std::vector<std::string> days;
        for (const auto& lesson : lessons_of(*studio.desk, *studio.desk->term()))
            if (lesson.student == studio.ada) days.push_back(lesson.on.iso());
        return days;
    }

    [[nodiscard]] std::vector<std::string> cells(Table table, std::size_t column) const {
        std::vector<std::string> texts;
        for (const auto& row : entry_of(table).listing(*studio.desk).rows)
            texts.push_back(row.cells.at(column).text);
        return texts;
    }

    /// A term with one lesson a week of Ada's, made; the day of the week as in ISO 8601.
    void make_term(const std::string& first, const std::string& last, int weekday) {
        run("term.add", {{"name", "made"}, {"first", first}, {"last", last}});
        run("slot.add", {{"who", "s" + std::to_string(studio.ada.number)},
                         {"weekday", std::to_string(weekday)},
                         {"time", "14.30"}});
        run("lesson.make");
    }

    PreparedStudio studio;
};

TEST_F(Terms, TheTimetableMakesTheTermsLessonsWithoutTheHolidays) {
    run("lesson.make");
    EXPECT_EQ(section_of(studio.desk->view()), Section::lessons);
    const auto days = adas_days();
    // The sixteen Wednesdays of the term but for the two of the half-term holiday.
    ASSERT_THAT(days, SizeIs(14));
    EXPECT_EQ(days.front(), "2026-09-02");
    EXPECT_EQ(days.back(), "2026-12-16");
    EXPECT_THAT(days, Not(testing::Contains("2026-10-14")));
    EXPECT_THAT(days, Not(testing::Contains("2026-10-21")));
}

TEST_F(Terms, AskedAgainTheyAreThereAlready) {
    run("lesson.make");
    const auto before = studio.dump();
    run("lesson.make");
    EXPECT_EQ(studio.dump(), before);
    EXPECT_THAT(studio.front.said, HasSubstr("made already"));
}

TEST_F(Terms, AnEmptyTimetableSaysSo) {
    run("term.add", {{"name", "Spring"}, {"first", "2027-01-07"}, {"last", "2027-03-25"}});
    run("lesson.make");
    EXPECT_THAT(studio.front.said, HasSubstr("Nobody stands in the timetable"));
}

TEST_F(Terms, AChangedTimetableLeavesWhatWasBeforeToday) {
    run("lesson.make");
    turn_to(Section::timetable);
    for (const auto& slot : studio.desk->file().timetable(studio.term))
        if (slot.student) studio.desk->choose(Table::timetable, slot.id.number);
    run("slot.change", {{"weekday", "4"}});
    EXPECT_THAT(term_lessons_summary(*studio.desk), HasSubstr("4 to make, 4 to take away"));
    run("lesson.make");
    const auto days = adas_days();
    ASSERT_THAT(days, SizeIs(14));
    EXPECT_EQ(days[9], "2026-11-18");
    EXPECT_EQ(days[10], "2026-11-26");
}

TEST_F(Terms, WhatWasKeptMovedOrCancelledStaysWhenAHolidayComes) {
    run("lesson.make");
    const auto lessons = studio.desk->file().lessons(Date(2026, 12, 1), Date(2026, 12, 18));
    std::vector<Lesson> adas;
    for (const auto& lesson : lessons)
        if (lesson.student == studio.ada) adas.push_back(lesson);
    ASSERT_THAT(adas, SizeIs(3));
    studio.desk->choose(Table::lessons, adas[0].id.number);
    run("lesson.cancel");
    studio.desk->choose(Table::lessons, adas[1].id.number);
    run("lesson.move", {{"on", "2026-12-11"}, {"time", "17:00"}});
    turn_to(Section::holidays);
    run("holiday.add", {{"name", "snow"}, {"first", "2026-12-01"}, {"last", "2026-12-18"}});
    turn_to(Section::lessons);
    run("lesson.make");
    std::map<std::string, Lesson::State> states;
    for (const auto& lesson : studio.desk->file().lessons(Date(2026, 12, 1), Date(2026, 12, 18)))
        if (lesson.student == studio.ada) states[lesson.on.iso()] = lesson.state;
    EXPECT_THAT(states, ElementsAre(testing::Pair("2026-12-02", Lesson::State::cancelled),
                                    testing::Pair("2026-12-09", Lesson::State::moved),
                                    testing::Pair("2026-12-11", Lesson::State::planned)));
}

TEST_F(Terms, ACancelledLessonIsOwedUntilItsMakeUpIsKept) {
    run("lesson.make");
    const auto today = studio.desk->file().lessons(studio.ada, test_day, test_day);
    studio.desk->choose(Table::lessons, today.front().id.number);
    for (const auto& lesson : today)
        if (lesson.student) studio.desk->choose(Table::lessons, lesson.id.number);
    run("lesson.cancel");
    EXPECT_THAT(term_lessons_summary(*studio.desk), HasSubstr("make-up lessons owed: 2"));
    EXPECT_THAT(cells(Table::lessons, 4), testing::Contains("cancelled · make-up owed"));
    run("lesson.make_up", {{"on", "2026-12-04"}, {"time", "9"}});
    EXPECT_THAT(cells(Table::lessons, 4), testing::Contains("cancelled · make-up arranged"));
    EXPECT_THAT(cells(Table::lessons, 4), testing::Contains("planned · in place of another"));
    const auto made_up = studio.desk->file().lessons(Date(2026, 12, 4), Date(2026, 12, 4));
    ASSERT_THAT(made_up, SizeIs(1));
    studio.desk->choose(Table::lessons, made_up.front().id.number);
    run("lesson.kept");
    EXPECT_THAT(term_lessons_summary(*studio.desk), HasSubstr("make-up lessons owed: 1"));
}

TEST_F(Terms, EveryOtherWeekIsNotShiftedByAHoliday) {
    run("slot.change", {{"every", "2"}, {"who", "s" + std::to_string(studio.ben.number)}});
    run("lesson.make");
    std::vector<std::string> days;
    for (const auto& lesson : lessons_of(*studio.desk, *studio.desk->term()))
        if (lesson.student == studio.ben && lesson.slot) days.push_back(lesson.on.iso());
    // Mondays from 31 August by fourteen days; 12 October falls to the holiday.
    EXPECT_THAT(days, ElementsAre("2026-08-31", "2026-09-14", "2026-09-28", "2026-10-26", "2026-11-09",
                                  "2026-11-23", "2026-12-07"));
}

TEST_F(Terms, ATermOverNewYearGoesOnByTheWeek) {
    // 31 December 2026 is a Thursday.
    make_term("2026-12-19", "2027-01-31", 4);
    EXPECT_THAT(adas_days(), ElementsAre("2026-12-24", "2026-12-31", "2027-01-07", "2027-01-14", "2027-01-21",
                                         "2027-01-28"));
}

TEST_F(Terms, ATermOverALeapDayHasALessonOnIt) {
    // 29 February 2028 is a Tuesday.
    make_term("2028-02-29", "2028-03-31", 2);
    EXPECT_THAT(adas_days(),
                ElementsAre("2028-02-29", "2028-03-07", "2028-03-14", "2028-03-21", "2028-03-28"));
    EXPECT_EQ(studio.desk->term()->first, Date(2028, 2, 29));
    run("term.change", {{"first", "2028-01-31"}, {"last", "2028-05-31"}});
    EXPECT_EQ(studio.desk->term()->last, Date(2028, 5, 31));
}

TEST_F(Terms, SummerTimeMovesNoLesson) {
    // In most of Europe the clocks went forward on Sunday 28 March 2027.
    make_term("2027-03-22", "2027-04-11", 7);
    EXPECT_THAT(adas_days(), ElementsAre("2027-03-28", "2027-04-04", "2027-04-11"));
    for (const auto& lesson : lessons_of(*studio.desk, *studio.desk->term()))
        EXPECT_EQ(lesson.starts, studio::TimeOfDay(14, 30));
}

TEST_F(Terms, TheNextTermBeginsAfterTheLastAndAMonthsEndIsSnapped) {
    run("term.change", {{"last", "2027-10-30"}});
    run("term.add", {{"name", "next"}});
    // Four months after 31 October there is no 31st.
    EXPECT_EQ(studio.desk->term()->first, Date(2027, 10, 31));
    EXPECT_EQ(studio.desk->term()->last, Date(2028, 2, 29));
}

TEST_F(Terms, ClashesAreKeptAndTold) {
    run("slot.add", {{"who", "s" + std::to_string(studio.ben.number)},
                     {"weekday", "3"},
                     {"time", "16:20"},
                     {"length", "30"}});
    EXPECT_EQ(timetable_summary(*studio.desk), "Lessons clash: 1 pair shares time.");
    EXPECT_THAT(cells(Table::timetable, 6),
                ElementsAre("", "clashes with Ben Beispiel at 16:20", "clashes with Ada Example at 16:00"));
    run("lesson.make");
    EXPECT_THAT(studio.front.said, HasSubstr("14 pairs of them share time"));
    EXPECT_THAT(cells(Table::lessons, 4), testing::Contains("planned · clashes"));
}

TEST_F(Terms, OneLessonAfterTheOtherIsNoClash) {
    run("slot.add", {{"who", "s" + std::to_string(studio.ben.number)}, {"weekday", "3"}, {"time", "16:30"}});
    EXPECT_EQ(timetable_summary(*studio.desk), "No lessons of the week clash.");
}

TEST_F(Terms, TheNextLessonIsOfferedAfterTheChosenOne) {
    run("slot.add");
    const auto slots = studio.desk->file().timetable(studio.term);
    ASSERT_THAT(slots, SizeIs(3));
    EXPECT_EQ(slots[1].starts, studio::TimeOfDay(15, 30));
    EXPECT_EQ(slots[1].weekday, 1);
    EXPECT_EQ(chosen_slot(*studio.desk)->id, slots[1].id);
}

TEST_F(Terms, BadDaysAndTimesAreAskedAgain) {
    refuse("term.add", {{"first", "2027-01-07"}, {"last", "2027-03-25"}}, "Give it a name");
    refuse("term.add", {{"name", "x"}, {"first", "2027-03-25"}, {"last", "2027-01-07"}}, "before the first");
    refuse("term.add", {{"name", "x"}, {"first", "2026-12-18"}, {"last", "2027-01-07"}},
           "Autumn has some of these days already (31 August 2026 to 18 December 2026)");
    refuse("term.change", {{"last", "2026-10-11"}}, "holiday half-term would lie outside");
    refuse("slot.add", {{"time", "25:00"}}, "Write the time");
    refuse("slot.add", {{"length", "half an hour"}}, "5 to 480 minutes");
    refuse("slot.change", {{"from", "2026-12-01"}, {"last", "2026-11-01"}}, "before the first");
    refuse("slot.change", {{"from", "2027-01-01"}, {"last", "2027-02-01"}}, "None of these days");
    turn_to(Section::holidays);
    refuse("holiday.add", {{"name", "x"}, {"first", "2027-01-01"}, {"last", "2027-01-02"}},
           "None of these days");
    turn_to(Section::groups);
    refuse("group.change", {{"name", "  "}}, "Give it a name");
}

TEST_F(Terms, HolidaysStandByTheirFirstDayAndTheNewOneIsChosen) {
    turn_to(Section::holidays);
    run("holiday.add", {{"name", "harvest"}, {"first", "2026-09-28"}, {"last", "2026-09-28"}});
    EXPECT_THAT(cells(Table::holidays, 3), ElementsAre("harvest", "half-term"));
    EXPECT_THAT(cells(Table::holidays, 2), ElementsAre("1", "12"));
    run("holiday.change", {{"first", "2026-11-02"}, {"last", "2026-11-03"}});
    EXPECT_THAT(cells(Table::holidays, 3), ElementsAre("half-term", "harvest"));
    run("holiday.remove");
    EXPECT_THAT(cells(Table::holidays, 3), ElementsAre("half-term"));
    action("edit.undo").run(*studio.desk);
    EXPECT_THAT(cells(Table::holidays, 3), ElementsAre("half-term", "harvest"));
    EXPECT_EQ(studio.desk->file().redo_name(), "Remove holiday harvest");
}

TEST_F(Terms, MembersComeAndGoOnADay) {
    turn_to(Section::groups);
    run("group.change", {{"members", key_of(studio.ben)}, {"from", "2026-11-02"}});
    auto group = *studio.desk->file().group(studio.group);
    EXPECT_THAT(studio::members_on(group, Date(2026, 11, 1)), SizeIs(2));
    EXPECT_THAT(studio::members_on(group, Date(2026, 11, 2)), ElementsAre(studio.ben));
    run("group.change", {{"members", key_of(studio.ada) + "\n" + key_of(studio.ben)}});
    group = *studio.desk->file().group(studio.group);
    EXPECT_THAT(studio::members_on(group, test_day - 1), ElementsAre(studio.ben));
    EXPECT_THAT(studio::members_on(group, test_day), SizeIs(2));
    EXPECT_THAT(cells(Table::groups, 1), ElementsAre("Ben Beispiel, Ada Example"));
}

TEST_F(Terms, AGroupIsArchivedAndTakenBack) {
    turn_to(Section::groups);
    run("group.archive");
    EXPECT_TRUE(studio.desk->file().group(studio.group)->archived);
    EXPECT_EQ(menu_text(action("group.archive"), *studio.desk), "Take gro&up back");
    run("group.archive");
    EXPECT_FALSE(studio.desk->file().group(studio.group)->archived);
}

TEST_F(Terms, RemovingATermKeepsWhatWasKept) {
    run("lesson.make");
    run("lesson.kept");
    const auto kept = studio.desk->lesson()->id;
    studio.front.agrees = true;
    run("term.remove");
    EXPECT_TRUE(studio.desk->file().terms().empty());
    EXPECT_FALSE(studio.desk->term());
    EXPECT_TRUE(studio.desk->file().lesson(kept));
    action("edit.undo").run(*studio.desk);
    ASSERT_TRUE(studio.desk->term());
    EXPECT_THAT(studio.desk->file().timetable(studio.term), SizeIs(2));
}

TEST_F(Terms, EveryTableOfATermHasItsCells) {
    run("lesson.make");
    for (const auto& [section, table] : {std::pair(Section::timetable, Table::timetable),
                                         {Section::lessons, Table::lessons},
                                         {Section::holidays, Table::holidays},
                                         {Section::groups, Table::groups}}) {
        turn_to(section);
        const auto listing = entry_of(table).listing(*studio.desk);
        EXPECT_FALSE(listing.rows.empty());
        for (const auto& row : listing.rows)
            EXPECT_EQ(row.cells.size(), listing.columns.size());
        for (const auto id : entry_of(table).offers)
            EXPECT_FALSE(action(id).text.empty());
    }
}

TEST_F(Terms, ThePlaceOpensTheTermOfToday) {
    run("term.add", {{"name", "Spring"}, {"first", "2027-01-07"}, {"last", "2027-03-25"}});
    studio.desk->go({.place = Place::students});
    action("go.terms").run(*studio.desk);
    EXPECT_EQ(studio.desk->term()->name, "Autumn");
    run("term.remove");
    action("go.students").run(*studio.desk);
    action("go.terms").run(*studio.desk);
    EXPECT_EQ(studio.desk->term()->name, "Spring");
}

TEST_F(Terms, TheListOfTermsFindsAndStandsLastFirst) {
    run("term.add", {{"name", "Spring"}, {"first", "2027-01-07"}, {"last", "2027-03-25"}});
    const auto all = terms_listing(*studio.desk, "");
    ASSERT_THAT(all.rows, SizeIs(2));
    EXPECT_EQ(all.rows.front().cells.front().text, "Spring");
    EXPECT_THAT(terms_listing(*studio.desk, "autu").rows, SizeIs(1));
    EXPECT_THAT(terms_listing(*studio.desk, "winter").rows, IsEmpty());
}

}  // namespace
}  // namespace lowledger::desk
