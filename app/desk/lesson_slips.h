#pragma once

#include <optional>
#include <string>

#include "app/desk/desk.h"
#include "model/studio/lessons.h"

namespace lowledger::desk {

struct When {
    studio::Date on;
    studio::TimeOfDay starts;
};

/// A day and a time; empty for 'never mind'.
std::optional<When> ask_when(Desk& desk, const std::string& title, const std::string& verb,
                             studio::Date start_on, studio::TimeOfDay start_at);

/// There is somebody to have one.
bool may_have_lesson(const Desk& desk);
/// A lesson arranged by itself, of a student or a group.
std::optional<studio::Lesson> ask_new_lesson(Desk& desk);

/// A day to look at.
std::optional<studio::Date> ask_day(Desk& desk, studio::Date start);

}  // namespace lowledger::desk
