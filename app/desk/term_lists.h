#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/desk/desk.h"
#include "app/desk/listing.h"
#include "model/studio/lessons.h"
#include "model/studio/timetable.h"

/// What the place of terms shows, and which row its actions speak of.
namespace lowledger::desk {

/// All terms with their days, the last one first.
Listing terms_listing(const Desk& desk, std::string_view find);
/// The term that was open, else that of today, else the last one.
std::optional<studio::TermId> term_to_open(const Desk& desk);

/// The week of the desk's term, by day and time, with what clashes.
Listing timetable_listing(const Desk& desk);
/// The lessons of the term's days, oldest first.
Listing term_lessons_listing(const Desk& desk);
/// The days of the term without lessons; a row's id is its number from 1.
Listing holidays_listing(const Desk& desk);
/// All groups with those who belong to them today.
Listing groups_listing(const Desk& desk);

/// How many lessons the week has, and how many clash.
std::string timetable_summary(const Desk& desk);
/// How many were kept and are owed, and what the timetable has still to make.
std::string term_lessons_summary(const Desk& desk);

/// The row chosen in the table, or its first; empty without a row.
std::optional<studio::TimetableSlot> chosen_slot(const Desk& desk);
std::optional<studio::Group> chosen_group(const Desk& desk);
/// Its place in the term's holidays.
std::optional<std::size_t> chosen_holiday(const Desk& desk);
/// The lesson chosen among the term's, or the first from today on, or the last.
std::optional<studio::Lesson> chosen_lesson(const Desk& desk);

/// What making the term's lessons would do now.
struct LessonsToMake {
    std::vector<studio::Lesson> made;
    std::vector<studio::LessonId> gone;
    [[nodiscard]] bool nothing() const { return made.empty() && gone.empty(); }
};
/// Planned lessons from today on that the timetable no longer makes go, and those that it has more come; days
/// before today stay as they were, save for a term of which none were made yet.
LessonsToMake lessons_to_make(const Desk& desk, const studio::Term& term);
/// All lessons of the term's days.
std::vector<studio::Lesson> lessons_of(const Desk& desk, const studio::Term& term);
/// The page of a term is open at that section.
bool at_terms(const Desk& desk, Section section);

}  // namespace lowledger::desk
