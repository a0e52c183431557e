#include "model/studio/calendar.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace lowledger::studio {
namespace {

using std::chrono::minutes;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::Pair;
using testing::SizeIs;

/// Over new year, over a leap day and over the end of summer time in Europe (27 October 2024).
Term winter() {
    return {.id = {1},
            .name = "Winter",
            .first = Date(2023, 10, 25),
            .last = Date(2024, 3, 31),
            .holidays = {{Date(2023, 12, 22), Date(2024, 1, 7), "Christmas"},
                         {Date(2024, 2, 12), Date(2024, 2, 12), "one day"}}};
}

TimetableSlot slot(int number, int weekday, TimeOfDay starts) {
    TimetableSlot slot{.id = {number}, .term = {1}};
    slot.student = StudentId{number};
    slot.weekday = weekday;
    slot.starts = starts;
    return slot;
}

constexpr int monday = 1;
constexpr int thursday = 4;
constexpr int saturday = 6;

Lesson lesson(int number, Date on, TimeOfDay starts, minutes length = minutes(30)) {
    Lesson lesson{.id = {number}, .on = on};
    lesson.starts = starts;
    lesson.length = length;
    return lesson;
}

TEST(Calendar, ATermHasItsDaysButItsHolidays) {
    const Term term = winter();
    EXPECT_FALSE(is_school_day(term, Date(2023, 10, 24)));
    EXPECT_TRUE(is_school_day(term, Date(2023, 10, 25)));
    EXPECT_TRUE(is_school_day(term, Date(2023, 12, 21)));
    EXPECT_FALSE(is_school_day(term, Date(2023, 12, 22)));
    EXPECT_FALSE(is_school_day(term, Date(2024, 1, 7)));
    EXPECT_TRUE(is_school_day(term, Date(2024, 1, 8)));
    EXPECT_FALSE(is_school_day(term, Date(2024, 2, 12)));
    EXPECT_TRUE(is_school_day(term, Date(2024, 3, 31)));
    EXPECT_FALSE(is_school_day(term, Date(2024, 4, 1)));
    const std::vector<Term> terms = {term};
    EXPECT_EQ(term_on(terms, Date(2024, 1, 1)), term);
    EXPECT_EQ(term_on(terms, Date(2024, 4, 1)), std::nullopt);
}

TEST(Calendar, ASlotGoesOverNewYearAndOverTheLeapDay) {
    const std::vector<Date> days = days_of(slot(1, thursday, {15, 0}), winter());
    // Counted on a calendar: 26 October to 21 December are 9 Thursdays, 11 January to 28 March 12.
    ASSERT_THAT(days, SizeIs(21));
    EXPECT_EQ(days.front(), Date(2023, 10, 26));
    EXPECT_EQ(days[8], Date(2023, 12, 21));
    EXPECT_EQ(days[9], Date(2024, 1, 11));
    EXPECT_THAT(days, testing::Contains(Date(2024, 2, 29)));
    EXPECT_EQ(days.back(), Date(2024, 3, 28));
    for (const Date day : days)
        EXPECT_EQ(day.weekday(), thursday);
}

TEST(Calendar, ASlotOnThe31stAndOnTheDayTheClocksChange) {
    // 31 March 2024 is a Sunday, and Europe's clocks go forward in its night.
    const std::vector<Date> days = days_of(slot(1, 7, {2, 30}), winter());
    EXPECT_EQ(days.back(), Date(2024, 3, 31));
    EXPECT_THAT(days, testing::Contains(Date(2023, 10, 29)));
    EXPECT_THAT(days, testing::Not(testing::Contains(Date(2023, 12, 31))));
}

TEST(Calendar, EveryOtherWeekIsNotShiftedByHolidays) {
    TimetableSlot every_other = slot(1, monday, {15, 0});
    every_other.every_weeks = 2;
    const std::vector<Date> days = days_of(every_other, winter());
    EXPECT_EQ(days.front(), Date(2023, 10, 30));
    for (const Date day : days)
        EXPECT_EQ((day - days.front()) % 14, 0);
    // 25 December falls into the holidays; the rhythm goes on from there.
    EXPECT_THAT(days, testing::Contains(Date(2024, 1, 8)));
    EXPECT_THAT(days, testing::Not(testing::Contains(Date(2023, 12, 25))));
}

TEST(Calendar, ASlotMayStartLateAndEndEarlyHalfOpen) {
    TimetableSlot part = slot(1, thursday, {15, 0});
    part.from = Date(2024, 1, 11);
    part.until = Date(2024, 1, 25);
    EXPECT_THAT(days_of(part, winter()), ElementsAre(Date(2024, 1, 11), Date(2024, 1, 18)));
    part.until = Date(2024, 1, 11);
    EXPECT_THAT(days_of(part, winter()), IsEmpty());
    part.term = {2};
    part.until.reset();
    EXPECT_THAT(days_of(part, winter()), IsEmpty());
}

TEST(Calendar, MakesATermsLessonsOnceInOrder) {
    TimetableSlot group = slot(2, monday, {14, 0});
    group.student.reset();
    group.group = GroupId{5};
    group.room = "hall";
    const std::vector<TimetableSlot> slots = {slot(1, monday, {15, 0}), group};
    std::vector<Lesson> lessons = lessons_to_make(winter(), slots, {});
    ASSERT_THAT(lessons, SizeIs(2 * days_of(slots[0], winter()).size()));
    EXPECT_EQ(lessons[0].group, GroupId{5});
    EXPECT_EQ(lessons[0].room, "hall");
    EXPECT_EQ(lessons[1].student, StudentId{1});
    EXPECT_EQ(lessons[1].on, Date(2023, 10, 30));
    EXPECT_EQ(lessons[1].starts, TimeOfDay(15, 0));
    EXPECT_EQ(lessons[2].on, Date(2023, 11, 6));
    for (std::size_t i = 0; i < lessons.size(); ++i)
        lessons[i].id = {static_cast<std::int64_t>(i) + 1};
    EXPECT_THAT(lessons_to_make(winter(), slots, lessons), IsEmpty());
    // One that was moved is not made again; one that was removed is.
    const Lesson later = moved(lessons[1], Date(2023, 11, 1), {16, 0});
    lessons.push_back(later);
    EXPECT_THAT(lessons_to_make(winter(), slots, lessons), IsEmpty());
    lessons.erase(lessons.begin());
    EXPECT_THAT(lessons_to_make(winter(), slots, lessons), SizeIs(1));
}

TEST(Calendar, TellsPlannedLessonsThatTheTimetableNoLongerMakes) {
    Term term = winter();
    std::vector<TimetableSlot> slots = {slot(1, thursday, {15, 0})};
    std::vector<Lesson> lessons = lessons_to_make(term, slots, {});
    for (std::size_t i = 0; i < lessons.size(); ++i)
        lessons[i].id = {static_cast<std::int64_t>(i) + 1};
    lessons[0].state = Lesson::State::kept;
    EXPECT_THAT(lessons_no_longer_made(term, slots, lessons), IsEmpty());
    term.holidays.push_back({Date(2023, 11, 1), Date(2023, 11, 3), "a bridge"});
    EXPECT_THAT(lessons_no_longer_made(term, slots, lessons), ElementsAre(lessons[1].id));
    slots[0].starts = TimeOfDay(16, 0);
    EXPECT_THAT(lessons_no_longer_made(term, slots, lessons), SizeIs(lessons.size() - 1));
    EXPECT_THAT(lessons_no_longer_made(term, {}, lessons), SizeIs(lessons.size() - 1));
}

TEST(Calendar, LessonsClashWhereTheyShareTime) {
    const Date day(2024, 1, 8);
    std::vector<Lesson> lessons = {lesson(1, day, {15, 30}), lesson(2, day, {15, 0}, minutes(90)),
                                   lesson(3, day, {16, 0}), lesson(4, day, {16, 30}),
                                   lesson(5, day + 1, {15, 30})};
    EXPECT_THAT(clashes(lessons), ElementsAre(Pair(1U, 0U), Pair(1U, 2U)));
    lessons[1].state = Lesson::State::cancelled;
    EXPECT_THAT(clashes(lessons), IsEmpty());
}

TEST(Calendar, SlotsClashOnlyWhereTheyMeet) {
    TimetableSlot even = slot(1, saturday, {10, 0});
    TimetableSlot odd = slot(2, saturday, {10, 15});
    EXPECT_THAT(clashes(std::vector{odd, even}, winter()), ElementsAre(Pair(1U, 0U)));
    even.every_weeks = 2;
    odd.every_weeks = 2;
    odd.from = days_of(even, winter())[0] + 1;
    EXPECT_THAT(clashes(std::vector{odd, even}, winter()), IsEmpty());
    odd.every_weeks = 1;
    EXPECT_THAT(clashes(std::vector{odd, even}, winter()), SizeIs(1));
    odd.starts = TimeOfDay(10, 30);
    EXPECT_THAT(clashes(std::vector{odd, even}, winter()), IsEmpty());
}

TEST(Calendar, AMadeUpLessonIsNoLongerOwed) {
    Lesson missed = lesson(1, Date(2024, 1, 9), {15, 0});
    missed.state = Lesson::State::missed_with_notice;
    missed.make_up_owed = usually_made_up(missed.state);
    Lesson cancelled = lesson(2, Date(2024, 1, 8), {15, 0});
    cancelled.state = Lesson::State::cancelled;
    cancelled.make_up_owed = usually_made_up(cancelled.state);
    Lesson stands_for = lesson(3, Date(2024, 1, 12), {15, 0});
    stands_for.instead_of = missed.id;
    EXPECT_THAT(make_ups_owed(std::vector{missed, cancelled, stands_for}),
                ElementsAre(OwedLesson{cancelled.id, {}}, OwedLesson{missed.id, stands_for.id}));
    stands_for.state = Lesson::State::kept;
    EXPECT_THAT(make_ups_owed(std::vector{missed, cancelled, stands_for}),
                ElementsAre(OwedLesson{cancelled.id, {}}));
    // A make-up that was missed itself settles nothing.
    stands_for.state = Lesson::State::missed_without_notice;
    EXPECT_THAT(make_ups_owed(std::vector{missed, stands_for}), ElementsAre(OwedLesson{missed.id, {}}));
    EXPECT_FALSE(usually_made_up(Lesson::State::missed_without_notice));
}

TEST(Calendar, AMovedLessonLeavesItsPlace) {
    Lesson first = lesson(1, Date(2024, 2, 29), {15, 0});
    first.student = StudentId{4};
    first.slot = TimetableSlotId{9};
    first.attendance = {{StudentId{4}}};
    const Lesson later = moved(first, Date(2024, 3, 1), {9, 5});
    EXPECT_EQ(first.state, Lesson::State::moved);
    EXPECT_FALSE(takes_place(first));
    EXPECT_EQ(later.instead_of, first.id);
    EXPECT_EQ(later.student, first.student);
    EXPECT_EQ(later.on, Date(2024, 3, 1));
    EXPECT_EQ(later.starts, TimeOfDay(9, 5));
    EXPECT_FALSE(later.id.filed());
    EXPECT_FALSE(later.slot.has_value());
    EXPECT_THAT(later.attendance, IsEmpty());
    EXPECT_TRUE(takes_place(later));
}

TEST(Calendar, MembersBelongHalfOpen) {
    const Group group{.id = {1},
                      .name = "Low brass",
                      .members = {{StudentId{2}, Date(2024, 1, 1), Date(2024, 2, 1)},
                                  {StudentId{1}, Date(2024, 2, 1), {}}}};
    EXPECT_THAT(members_on(group, Date(2023, 12, 31)), IsEmpty());
    EXPECT_THAT(members_on(group, Date(2024, 1, 31)), ElementsAre(StudentId{2}));
    EXPECT_THAT(members_on(group, Date(2024, 2, 1)), ElementsAre(StudentId{1}));
}

}  // namespace
}  // namespace lowledger::studio
