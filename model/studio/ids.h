#pragma once

#include <compare>
#include <cstdint>
#include <functional>

namespace lowledger::studio {

/// The number of a record in its table. Ids of different tables do not mix; 0 is a record not yet filed.
template <typename Record>
struct Id {
    std::int64_t number = 0;
    constexpr auto operator<=>(const Id&) const = default;
    [[nodiscard]] constexpr bool filed() const { return number != 0; }
};

using StudentId = Id<struct Student>;
using HornId = Id<struct Horn>;
using HornUseId = Id<struct HornUse>;
using SlidePositionId = Id<struct SlidePosition>;
using TuningSheetId = Id<struct TuningSheet>;
using GivenSettingsId = Id<struct GivenSettings>;
using StudentEventId = Id<struct StudentEvent>;
using PieceId = Id<struct Piece>;
using MouthpieceId = Id<struct Mouthpiece>;
using UpkeepId = Id<struct Upkeep>;
using LoanId = Id<struct Loan>;
using TermId = Id<struct Term>;
using GroupId = Id<struct Group>;
using TimetableSlotId = Id<struct TimetableSlot>;
using LessonId = Id<struct Lesson>;
using RoutineId = Id<struct Routine>;
using AssignmentId = Id<struct Assignment>;
using PracticeEntryId = Id<struct PracticeEntry>;

}  // namespace lowledger::studio

template <typename Record>
struct std::hash<lowledger::studio::Id<Record>> {
    std::size_t operator()(lowledger::studio::Id<Record> id) const noexcept {
        return std::hash<std::int64_t>{}(id.number);
    }
};
