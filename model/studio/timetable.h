#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "model/studio/date.h"
#include "model/studio/ids.h"
#include "model/studio/time_of_day.h"

namespace lowledger::studio {

/// Days without lessons, both ends in it.
struct Holiday {
    Date first;
    Date last;
    std::string name{};
    bool operator==(const Holiday&) const = default;
};

/// The span that lessons, assignments and summaries are counted in, both ends in it. No two terms share a
/// day.
struct Term {
    TermId id;
    std::string name;
    Date first;
    Date last;
    /// By their first day.
    std::vector<Holiday> holidays{};
    bool operator==(const Term&) const = default;
};

/// A student belongs to a group for a time.
struct GroupMember {
    StudentId student;
    Date from;
    /// The first day it is no longer so; empty: still.
    std::optional<Date> until{};
    bool operator==(const GroupMember&) const = default;
};

/// Students who are taught together.
struct Group {
    GroupId id;
    std::string name;
    std::string remarks{};
    bool archived = false;
    /// In the order they are called.
    std::vector<GroupMember> members{};
    bool operator==(const Group&) const = default;
};

/// A lesson of the weekly timetable of one term, of a student or of a group (exactly one of them).
struct TimetableSlot {
    TimetableSlotId id;
    TermId term;
    std::optional<StudentId> student{};
    std::optional<GroupId> group{};
    /// 1 = Monday .. 7 = Sunday.
    int weekday = 1;
    TimeOfDay starts{};
    std::chrono::minutes length{30};
    /// 1: every week; 2: every other one, counted from the first lesson.
    int every_weeks = 1;
    /// Where they differ from the term's: the first day, and the first day that it is no longer so.
    std::optional<Date> from{};
    std::optional<Date> until{};
    std::string room{};
    bool operator==(const TimetableSlot&) const = default;
};

}  // namespace lowledger::studio
