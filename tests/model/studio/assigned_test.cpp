#include "model/studio/assigned.h"

#include <gtest/gtest.h>

namespace lowledger::studio {
namespace {

const Date monday(2026, 11, 23);

Assignment week_for(StudentId student) {
    return {.id = AssignmentId{7},
            .routine = RoutineId{1},
            .student = student,
            .from = monday,
            .until = monday + 7};
}

TEST(Assigned, AGroupsIsAMembersOnlyWhileTheyAreOfIt) {
    const StudentId ada{1};
    Assignment groups = week_for(ada);
    groups.student.reset();
    groups.group = GroupId{3};
    const Group group{.id = GroupId{3}, .name = "Low brass", .members = {{ada, monday + 2, monday + 4}}};
    const std::vector all{week_for(ada), week_for(StudentId{2}), groups};
    EXPECT_EQ(assigned_on(all, std::vector{group}, ada, monday + 1).size(), 1U);
    EXPECT_EQ(assigned_on(all, std::vector{group}, ada, monday + 2), (std::vector{all[0], groups}));
    EXPECT_EQ(assigned_on(all, std::vector{group}, ada, monday + 4).size(), 1U);
}

TEST(Assigned, RenewedIsTheSameAgainForAsLong) {
    auto old = week_for(StudentId{1});
    const auto next = renewed_for_as_long(old, monday + 5);
    ASSERT_TRUE(next);
    EXPECT_EQ(next->from, monday + 5);
    EXPECT_EQ(next->until, monday + 12);
    EXPECT_EQ(next->follows, old.id);
    EXPECT_EQ(old.until, monday + 5);
    EXPECT_EQ(old.end, Assignment::End::renewed);

    auto over = week_for(StudentId{1});
    ASSERT_TRUE(renewed_for_as_long(over, monday + 20));
    EXPECT_EQ(over.until, monday + 7);

    auto begins = week_for(StudentId{1});
    EXPECT_FALSE(renewed_for_as_long(begins, monday));
    begins.until.reset();
    EXPECT_FALSE(renewed_for_as_long(begins, monday + 3));
    EXPECT_EQ(begins.end, Assignment::End::at_its_time);
}

TEST(Assigned, ARoutineIsForLevelsAndForWordsOfAKindsName) {
    Routine routine{.id = {}, .title = "T", .levels = {Level::advanced}, .horns = {"Tuba"}};
    EXPECT_FALSE(is_for(routine, Level::beginner));
    EXPECT_TRUE(is_for(routine, Level::advanced));
    EXPECT_TRUE(is_for(routine, *horns::find_kind(horns::built_in_kinds(), "bbb-tuba-3")));
    EXPECT_FALSE(is_for(routine, *horns::find_kind(horns::built_in_kinds(), "alto-trombone")));
    routine.horns = {"trombone"};
    EXPECT_TRUE(is_for(routine, *horns::find_kind(horns::built_in_kinds(), "alto-trombone")));
    routine.horns.clear();
    EXPECT_TRUE(is_for(routine, *horns::find_kind(horns::built_in_kinds(), "alto-trombone")));
}

}  // namespace
}  // namespace lowledger::studio
