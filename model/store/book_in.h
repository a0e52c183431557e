#pragma once

#include <SQLiteCpp/Database.h>

#include "model/studio/lending.h"
#include "model/studio/lessons.h"
#include "model/studio/people.h"
#include "model/studio/practice.h"
#include "model/studio/timetable.h"

/// The records of the teaching week into the tables, as records_in.h has those of horns and tuning.
namespace lowledger::store {

studio::StudentEventId insert(SQLite::Database& database, const studio::StudentEvent& event);
void replace(SQLite::Database& database, const studio::StudentEvent& event);
void remove(SQLite::Database& database, studio::StudentEventId id);

studio::PieceId insert(SQLite::Database& database, const studio::Piece& piece);
void replace(SQLite::Database& database, const studio::Piece& piece);
void remove(SQLite::Database& database, studio::PieceId id);

studio::MouthpieceId insert(SQLite::Database& database, const studio::Mouthpiece& mouthpiece);
void replace(SQLite::Database& database, const studio::Mouthpiece& mouthpiece);
void remove(SQLite::Database& database, studio::MouthpieceId id);

studio::UpkeepId insert(SQLite::Database& database, const studio::Upkeep& upkeep);
void replace(SQLite::Database& database, const studio::Upkeep& upkeep);
void remove(SQLite::Database& database, studio::UpkeepId id);

/// Refused where the horn is lent to someone on one of these days.
studio::LoanId insert(SQLite::Database& database, const studio::Loan& loan);
void replace(SQLite::Database& database, const studio::Loan& loan);
void remove(SQLite::Database& database, studio::LoanId id);

/// Refused where another term has one of these days.
studio::TermId insert(SQLite::Database& database, const studio::Term& term);
void replace(SQLite::Database& database, const studio::Term& term);
void remove(SQLite::Database& database, studio::TermId id);

studio::GroupId insert(SQLite::Database& database, const studio::Group& group);
void replace(SQLite::Database& database, const studio::Group& group);
void remove(SQLite::Database& database, studio::GroupId id);

studio::TimetableSlotId insert(SQLite::Database& database, const studio::TimetableSlot& slot);
void replace(SQLite::Database& database, const studio::TimetableSlot& slot);
void remove(SQLite::Database& database, studio::TimetableSlotId id);

studio::LessonId insert(SQLite::Database& database, const studio::Lesson& lesson);
void replace(SQLite::Database& database, const studio::Lesson& lesson);
void remove(SQLite::Database& database, studio::LessonId id);

studio::RoutineId insert(SQLite::Database& database, const studio::Routine& routine);
void replace(SQLite::Database& database, const studio::Routine& routine);
/// Refused while it is or was given to anyone.
void remove(SQLite::Database& database, studio::RoutineId id);

studio::AssignmentId insert(SQLite::Database& database, const studio::Assignment& assignment);
void replace(SQLite::Database& database, const studio::Assignment& assignment);
void remove(SQLite::Database& database, studio::AssignmentId id);

studio::PracticeEntryId insert(SQLite::Database& database, const studio::PracticeEntry& entry);
void replace(SQLite::Database& database, const studio::PracticeEntry& entry);
void remove(SQLite::Database& database, studio::PracticeEntryId id);

/// What the book holds of a student, before their row goes. Refused while others have borrowed a mouthpiece
/// of theirs.
void drop_book_of(SQLite::Database& database, studio::StudentId id);
void drop_book_of(SQLite::Database& database, studio::HornId id);

}  // namespace lowledger::store
