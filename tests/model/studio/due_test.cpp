#include "model/studio/due.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace lowledger::studio {
namespace {

using testing::ElementsAre;

const Date day(2024, 2, 29);

Loan loan(Date from, std::optional<Date> until) {
    return {.id = {1}, .horn = {1}, .student = {1}, .from = from, .until = until};
}

TEST(Due, ALoanIsHalfOpen) {
    const Loan out = loan(day, day + 1);
    EXPECT_FALSE(holds_on(out, day - 1));
    EXPECT_TRUE(holds_on(out, day));
    EXPECT_FALSE(holds_on(out, day + 1));
    EXPECT_TRUE(holds_on(loan(day, {}), Date(2199, 12, 31)));
    EXPECT_FALSE(holds_on(loan(day, day), day));
}

TEST(Due, SpansThatTouchShareNoDay) {
    EXPECT_FALSE(share_a_day(day, day + 7, day + 7, {}));
    EXPECT_TRUE(share_a_day(day, day + 8, day + 7, {}));
    EXPECT_TRUE(share_a_day(day, {}, day + 700, {}));
    EXPECT_TRUE(share_a_day(day, day + 30, day + 3, day + 4));
    EXPECT_FALSE(share_a_day(day, day, day - 1, {}));
    EXPECT_FALSE(share_a_day(day, {}, day - 7, day));
}

TEST(Due, ALoanIsOverdueAfterItsDay) {
    Loan out = loan(day, {});
    EXPECT_FALSE(is_overdue(out, day + 400));
    out.due = day + 10;
    EXPECT_FALSE(is_overdue(out, day + 10));
    EXPECT_TRUE(is_overdue(out, day + 11));
    out.until = day + 11;
    EXPECT_FALSE(is_overdue(out, day + 11));
}

Upkeep upkeep(int number, Upkeep::Work work, std::optional<Date> done, std::optional<Date> next) {
    Upkeep entry{.id = {number}, .noted_on = day};
    entry.horn = HornId{1};
    entry.work = work;
    entry.done_on = done;
    entry.next_due = next;
    return entry;
}

TEST(Due, UpkeepIsDueUntilTheSameWorkIsDoneAgain) {
    using Work = Upkeep::Work;
    const Upkeep cleaned = upkeep(1, Work::cleaned, day, day + 180);
    const Upkeep to_do = upkeep(2, Work::repaired, {}, {});
    const Upkeep greased = upkeep(3, Work::greased, day + 170, {});
    const std::vector<Upkeep> log = {cleaned, to_do, greased};
    EXPECT_THAT(due(log, day + 179), ElementsAre(to_do));
    EXPECT_THAT(due(log, day + 180), ElementsAre(cleaned, to_do));
    std::vector<Upkeep> done = log;
    done.push_back(upkeep(4, Work::cleaned, day + 181, {}));
    EXPECT_THAT(due(done, day + 400), ElementsAre(to_do));
    done.back().horn = HornId{2};
    EXPECT_THAT(due(done, day + 400), ElementsAre(cleaned, to_do));
}

Assignment assignment() {
    Assignment given{.id = {1}, .routine = {1}, .from = Date(2024, 2, 26)};
    given.student = StudentId{1};
    given.days = Weekdays{1, 3, 5};
    return given;
}

TEST(Due, AnAssignmentIsForItsDays) {
    Assignment given = assignment();
    given.until = Date(2024, 3, 4);
    EXPECT_TRUE(is_for(given, Date(2024, 2, 26)));
    EXPECT_FALSE(is_for(given, Date(2024, 2, 27)));
    EXPECT_TRUE(is_for(given, Date(2024, 3, 1)));
    EXPECT_FALSE(is_for(given, Date(2024, 3, 4)));
    EXPECT_EQ(Weekdays::from_bits(given.days.bits()), given.days);
    EXPECT_EQ(Weekdays().bits(), 127);
}

TEST(Due, CountsWhatWasPractised) {
    const Assignment given = assignment();
    const auto entry = [](Date on, StudentId student, std::optional<AssignmentId> of) {
        return PracticeEntry{.id = {}, .student = student, .on = on, .assignment = of};
    };
    const std::vector<PracticeEntry> entries = {
        entry(Date(2024, 2, 26), {1}, AssignmentId{1}), entry(Date(2024, 2, 27), {1}, AssignmentId{1}),
        entry(Date(2024, 2, 28), {2}, AssignmentId{1}), entry(Date(2024, 2, 28), {1}, {}),
        entry(Date(2024, 3, 9), {1}, AssignmentId{1})};
    EXPECT_EQ(practised(given, entries, {1}, Date(2024, 1, 1), Date(2024, 3, 3)),
              (PracticeCount{.due = 3, .done = 2}));
    EXPECT_EQ(practised(given, entries, {1}, Date(2024, 1, 1), Date(2024, 2, 1)), PracticeCount{});
}

TEST(Due, ARenewedAssignmentFollowsTheOld) {
    Assignment old = assignment();
    old.until = Date(2024, 3, 11);
    const Assignment next = renewed(old, Date(2024, 3, 4), Date(2024, 3, 18));
    EXPECT_EQ(old.until, Date(2024, 3, 4));
    EXPECT_EQ(old.end, Assignment::End::renewed);
    EXPECT_EQ(next.follows, old.id);
    EXPECT_EQ(next.days, old.days);
    EXPECT_EQ(next.until, Date(2024, 3, 18));
    EXPECT_EQ(next.end, Assignment::End::at_its_time);
    // One that had run out keeps its last day.
    Assignment ran_out = assignment();
    ran_out.until = Date(2024, 2, 28);
    renewed(ran_out, Date(2024, 3, 4), {});
    EXPECT_EQ(ran_out.until, Date(2024, 2, 28));
}

TEST(Due, AStoppedAssignmentEndsThatDay) {
    Assignment given = assignment();
    stop(given, Date(2024, 3, 1));
    EXPECT_EQ(given.end, Assignment::End::stopped);
    EXPECT_FALSE(is_for(given, Date(2024, 3, 1)));
    Assignment ran_out = assignment();
    ran_out.until = Date(2024, 2, 28);
    stop(ran_out, Date(2024, 3, 1));
    EXPECT_EQ(ran_out.end, Assignment::End::at_its_time);
    Assignment not_begun = assignment();
    stop(not_begun, Date(2024, 1, 1));
    EXPECT_EQ(not_begun.until, not_begun.from);
}

}  // namespace
}  // namespace lowledger::studio
