#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/studio/due.h"
#include "model/studio/lessons.h"
#include "model/studio/records.h"

/// Records as the program's places need them together.
namespace lowledger::studio {

/// Which sheet it is, without its readings.
struct SheetHead {
    TuningSheetId id;
    StudentId student;
    HornId horn;
    Date on;
    bool operator==(const SheetHead&) const = default;
};

/// What a student practises, with the routine it is.
struct GivenRoutine {
    Assignment assignment;
    std::string title;
    std::string dose;
    bool operator==(const GivenRoutine&) const = default;
};

/// What a teacher wants to know of a student before a lesson.
struct StudentAhead {
    Student student;
    /// Played on that day.
    std::vector<HornId> horns;
    /// The last lesson that was kept before that day: theirs, or one of a group of theirs.
    std::optional<Lesson> last;
    /// What holds on that day, given to them or to a group of theirs.
    std::vector<GivenRoutine> routines;
    std::optional<SheetHead> last_sheet;
    /// The last settings given out were not yet said to be moved.
    bool settings_wait = false;
    bool operator==(const StudentAhead&) const = default;
};

/// A lesson with those it is for.
struct LessonAhead {
    Lesson lesson;
    /// Empty for a student's lesson.
    std::string group_name;
    /// The student, or the group's members on that day.
    std::vector<StudentAhead> students;
    bool operator==(const LessonAhead&) const = default;
};

struct Overdue {
    /// Longest overdue first.
    std::vector<Loan> loans;
    /// Work that is due again, longest due first.
    std::vector<Upkeep> due_again;
    /// Work noted and not yet done, oldest first.
    std::vector<Upkeep> to_do;
    bool operator==(const Overdue&) const = default;
};

/// How much goes when a student is deleted.
struct Belongings {
    int sheets = 0;
    int settings = 0;
    int lessons = 0;
    int attendances = 0;
    int assignments = 0;
    int practice_entries = 0;
    int loans = 0;
    int horn_uses = 0;
    int pieces = 0;
    int events = 0;
    /// Their own ones.
    int horns = 0;
    int mouthpieces = 0;
    bool operator==(const Belongings&) const = default;
};

}  // namespace lowledger::studio
