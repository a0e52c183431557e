#pragma once

#include <string>
#include <vector>

#include "app/desk/desk.h"
#include "app/desk/listing.h"
#include "model/studio/overviews.h"

namespace lowledger::desk {

/// Lines under a heading: what a teacher reads before a lesson.
struct BriefPart {
    std::string heading;
    std::vector<std::string> lines;
    bool operator==(const BriefPart&) const = default;
};

/// A lesson of the day, as it is told.
struct DayLesson {
    studio::Lesson lesson;
    /// "15:30 to 16:00".
    std::string time;
    std::string who;
    /// The horns' marks; empty for a group.
    std::string horn;
    std::string room;
    /// How it went, that it clashes with another, that it stands for another.
    std::string state;
    /// Whether a sheet is due, or settings wait; of a group, for whom.
    std::string sheet;
    /// The students' pages that it opens.
    std::vector<studio::StudentId> students;
    /// What each was told and does.
    std::vector<BriefPart> brief;
};

/// Something that should have happened.
struct DueItem {
    std::string what;
    std::string whose;
    std::string since;
    studio::Date from;
    /// Where it is seen to.
    View opens;
};

/// A day of the studio, as a teacher looks at it.
struct Day {
    studio::Date on;
    /// By time.
    std::vector<DayLesson> lessons;
    /// As of today, whichever day is looked at: loans, upkeep, make-up lessons owed.
    std::vector<DueItem> due;
};

/// After so many days a student's last sheet is old.
inline constexpr int sheet_is_old_after_days = 42;

Day day_of(const store::StudioFile& file, const words::Words& words, studio::Date on, studio::Date today);

/// "Wednesday, 25 November 2026".
std::string day_title(const words::Words& words, studio::Date on);
/// A row for each lesson, by its id.
Listing lessons_listing(const Day& day, const words::Words& words);
/// A row for each item, by its place in `due`.
Listing due_listing(const Day& day, const words::Words& words);

/// Turns to the lesson's student, or to the one of the group that is chosen, at 'Last time'.
void open_lesson(Desk& desk, studio::LessonId id);

}  // namespace lowledger::desk
