#pragma once

#include <concepts>

#include "model/studio/lending.h"
#include "model/studio/lessons.h"
#include "model/studio/people.h"
#include "model/studio/practice.h"
#include "model/studio/records.h"
#include "model/studio/timetable.h"

namespace lowledger::store {

/// The records that are filed by id and can be changed.
template <typename Record>
concept Kept = std::same_as<Record, studio::Student> || std::same_as<Record, studio::Horn> ||
    std::same_as<Record, studio::HornUse> || std::same_as<Record, studio::TuningSheet> ||
    std::same_as<Record, studio::GivenSettings> || std::same_as<Record, studio::StudentEvent> ||
    std::same_as<Record, studio::Piece> || std::same_as<Record, studio::Mouthpiece> ||
    std::same_as<Record, studio::Upkeep> || std::same_as<Record, studio::Loan> ||
    std::same_as<Record, studio::Term> || std::same_as<Record, studio::Group> ||
    std::same_as<Record, studio::TimetableSlot> || std::same_as<Record, studio::Lesson> ||
    std::same_as<Record, studio::Routine> || std::same_as<Record, studio::Assignment> ||
    std::same_as<Record, studio::PracticeEntry>;

/// The same, and the history of slides, which is added to and never changed.
template <typename Record>
concept Filed = Kept<Record> || std::same_as<Record, studio::SlidePosition>;

}  // namespace lowledger::store
