#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/desk/desk.h"
#include "app/desk/slip.h"
#include "model/studio/lessons.h"
#include "model/studio/timetable.h"

namespace lowledger::desk {

/// The lesson that a view is turned to. On Today the one chosen there, else the day's first that is still
/// planned, else its last; on a student's page the one chosen, else the day's in the same way.
std::optional<studio::Lesson> lesson_at(const store::StudioFile& file, const View& view, studio::Date today);

/// The student's or group's name; empty where neither is there any more.
std::string who_has(const store::StudioFile& file, const studio::Lesson& lesson);
std::string who_has(const store::StudioFile& file, const studio::TimetableSlot& slot);
/// "15:30 to 16:00".
std::string span_text(const words::Words& words, const studio::Lesson& lesson);
/// How it went: "kept", "missed with notice".
std::string state_text(const words::Words& words, studio::Lesson::State state);

/// What can be said of how a lesson went. Of a group's lesson on a student's page: whether that student was
/// there.
std::vector<SlipChoice> outcomes(const words::Words& words, const studio::Lesson& lesson,
                                 std::optional<studio::StudentId> student);
/// What is said of it now, in words and by its key.
std::string outcome_text(const words::Words& words, const studio::Lesson& lesson,
                         std::optional<studio::StudentId> student);
std::string outcome_of(const studio::Lesson& lesson, std::optional<studio::StudentId> student);
/// The lesson with that said of it. One that is usually made up is owed from then on; a group's that is kept
/// has those present of whom nothing was said. Throws std::logic_error for a key that is none.
studio::Lesson with_outcome(studio::Lesson lesson, std::optional<studio::StudentId> student,
                            std::string_view key, const std::vector<studio::StudentId>& members);

/// Files that of the desk's lesson as one step; nothing where it is said already.
void file_outcome(Desk& desk, std::string_view key);

/// The members on its day of the group that has the lesson; none of a student's.
std::vector<studio::StudentId> members_of(const store::StudioFile& file, const studio::Lesson& lesson);
/// Asks who of the group was there, all at once, and files it as one step.
void take_attendance(Desk& desk);

enum class LessonText { done, next, remark };
/// Files a text of a lesson as one step; nothing where it is the same. A planned lesson of today or before of
/// which something was done is kept.
void file_text(Desk& desk, studio::LessonId id, LessonText which, const std::string& text);
void file_make_up_owed(Desk& desk, studio::LessonId id, bool owed);

/// The student whose page is open.
std::optional<studio::StudentId> student_on_page(const Desk& desk);

}  // namespace lowledger::desk
