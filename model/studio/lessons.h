#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "model/studio/date.h"
#include "model/studio/ids.h"
#include "model/studio/time_of_day.h"

namespace lowledger::studio {

/// Whether a student of a group was there.
struct Attendance {
    enum class State { present, late, missed_with_notice, missed_without_notice };
    StudentId student;
    State state = State::present;
    bool operator==(const Attendance&) const = default;
};

/// One lesson on one day, of a student or of a group (exactly one of them).
struct Lesson {
    /// moved: another lesson stands for it (that one's `instead_of`). cancelled: by the teacher or the
    /// school.
    enum class State { planned, kept, missed_with_notice, missed_without_notice, moved, cancelled };

    LessonId id;
    std::optional<StudentId> student{};
    std::optional<GroupId> group{};
    /// The slot of the timetable that it was made from; empty: arranged by itself.
    std::optional<TimetableSlotId> slot{};
    Date on;
    TimeOfDay starts{};
    std::chrono::minutes length{30};
    std::string room{};
    State state = State::planned;
    /// A lesson is owed for this one.
    bool make_up_owed = false;
    /// The lesson that this one stands for: moved from it, or made up for it.
    std::optional<LessonId> instead_of{};
    std::string done{};
    std::string next{};
    /// Never printed.
    std::string private_remark{};
    /// Of a group's lesson, as far as it was taken; empty for a student's.
    std::vector<Attendance> attendance{};
    bool operator==(const Lesson&) const = default;
};

}  // namespace lowledger::studio
