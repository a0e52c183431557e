#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "app/desk/desk.h"
#include "app/desk/slip.h"
#include "model/studio/lessons.h"
#include "model/studio/timetable.h"

namespace lowledger::desk {

struct When {
    studio::Date on;
    studio::TimeOfDay starts;
};

/// A day and a time; empty for 'never mind'.
std::optional<When> ask_when(Desk& desk, const std::string& title, const std::string& verb,
                             studio::Date start_on, studio::TimeOfDay start_at);

/// Adds the field "time", which has to be one; `time_of` reads it.
void ask_time(Slip& slip, const words::Words& words, studio::TimeOfDay start);
studio::TimeOfDay time_of(const SlipAnswers& answers);
/// Adds the field "length" in minutes, which has to be that of a lesson; `length_of` reads it.
void ask_length(Slip& slip, const words::Words& words, std::chrono::minutes start);
std::chrono::minutes length_of(const SlipAnswers& answers);

/// Whose a lesson is: of exactly one of them.
struct Whose {
    std::optional<studio::StudentId> student{};
    std::optional<studio::GroupId> group{};
};
/// Adds the field "who" of all students and groups that are not archived, and `start` in any case; `whose`
/// reads it.
void ask_whose(Slip& slip, const Desk& desk, const Whose& start);
Whose whose(const SlipAnswers& answers);

/// There is somebody to have one.
bool may_have_lesson(const Desk& desk);
/// A lesson arranged by itself, of a student or a group.
std::optional<studio::Lesson> ask_new_lesson(Desk& desk);

/// A day to look at.
std::optional<studio::Date> ask_day(Desk& desk, studio::Date start);

}  // namespace lowledger::desk
