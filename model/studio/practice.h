#pragma once

#include <chrono>
#include <compare>
#include <initializer_list>
#include <optional>
#include <string>
#include <vector>

#include "model/studio/date.h"
#include "model/studio/ids.h"
#include "model/studio/level.h"

namespace lowledger::studio {

/// Something to practise.
struct Routine {
    RoutineId id;
    /// In the built-in library; empty: the teacher's own.
    std::string key{};
    std::string title;
    std::string aim{};
    std::vector<std::string> steps{};
    /// How much at a time, as it is told: "four times, slowly".
    std::string dose{};
    /// About how long that takes; empty: not said.
    std::optional<std::chrono::minutes> length{};
    /// For whom; empty: every level.
    std::vector<Level> levels{};
    /// For which horns, by words of the teacher's: "tuba", "trombone"; empty: all.
    std::vector<std::string> horns{};
    /// Notes to play, as a line of music text; may be empty.
    std::string music{};
    std::string remarks{};
    bool archived = false;
    bool operator==(const Routine&) const = default;
};

/// Days of the week.
class Weekdays {
  public:
    /// Every day.
    constexpr Weekdays() = default;
    /// 1 = Monday .. 7 = Sunday; others are left out.
    constexpr Weekdays(std::initializer_list<int> days) : bits_(0) {
        for (const int day : days)
            if (day >= 1 && day <= 7) bits_ |= 1 << (day - 1);
    }
    [[nodiscard]] constexpr bool has(int weekday) const {
        return weekday >= 1 && weekday <= 7 && ((bits_ >> (weekday - 1)) & 1) != 0;
    }
    /// As the studio file keeps them: Monday is bit 0.
    [[nodiscard]] constexpr int bits() const { return bits_; }
    static constexpr Weekdays from_bits(int bits) {
        Weekdays days;
        days.bits_ = bits & 127;
        return days;
    }
    constexpr bool operator==(const Weekdays&) const = default;

  private:
    int bits_ = 127;
};

/// A routine given to a student or to a group (exactly one of them). One that goes on or changes is a new
/// assignment that `follows` the old.
struct Assignment {
    /// How it ended, or will: at its time, or before it.
    enum class End { at_its_time, renewed, changed, stopped };

    AssignmentId id;
    RoutineId routine;
    std::optional<StudentId> student{};
    std::optional<GroupId> group{};
    Date from;
    /// The first day it is no longer so; empty: until further notice.
    std::optional<Date> until{};
    Weekdays days{};
    /// How much; empty: the routine's dose.
    std::string amount{};
    std::string remarks{};
    End end = End::at_its_time;
    std::optional<AssignmentId> follows{};
    bool operator==(const Assignment&) const = default;
};

/// What a student practised on a day.
struct PracticeEntry {
    PracticeEntryId id;
    StudentId student;
    Date on;
    /// Empty: something else, said in the remarks. At most one entry a day for an assignment.
    std::optional<AssignmentId> assignment{};
    /// Empty: ticked only.
    std::optional<std::chrono::minutes> length{};
    std::string remarks{};
    bool operator==(const PracticeEntry&) const = default;
};

}  // namespace lowledger::studio
