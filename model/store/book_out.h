#pragma once

#include <SQLiteCpp/Database.h>
#include <optional>
#include <vector>

#include "model/studio/lending.h"
#include "model/studio/lessons.h"
#include "model/studio/people.h"
#include "model/studio/practice.h"
#include "model/studio/timetable.h"

/// The records of the teaching week out of the tables. Several statements each: run them inside one
/// transaction.
namespace lowledger::store {

/// Both ends in it.
struct Days {
    studio::Date first;
    studio::Date last;
};

std::vector<studio::StudentEvent> read_events(SQLite::Database& database, studio::StudentId id);
std::vector<studio::Piece> read_pieces(SQLite::Database& database, studio::StudentId id);
std::vector<studio::Mouthpiece> read_mouthpieces(SQLite::Database& database);
std::optional<studio::Mouthpiece> read_mouthpiece(SQLite::Database& database, studio::MouthpieceId id);
std::vector<studio::Upkeep> read_upkeep(SQLite::Database& database, studio::HornId id);
std::vector<studio::Upkeep> read_upkeep(SQLite::Database& database, studio::MouthpieceId id);
std::vector<studio::Loan> read_loans(SQLite::Database& database, studio::StudentId id);
std::vector<studio::Loan> read_loans(SQLite::Database& database, studio::HornId id);
std::vector<studio::Loan> read_loans_out(SQLite::Database& database);
std::optional<studio::Loan> read_loan(SQLite::Database& database, studio::LoanId id);
std::vector<studio::Term> read_terms(SQLite::Database& database);
std::optional<studio::Term> read_term(SQLite::Database& database, studio::TermId id);
std::vector<studio::Group> read_groups(SQLite::Database& database);
std::optional<studio::Group> read_group(SQLite::Database& database, studio::GroupId id);
std::vector<studio::TimetableSlot> read_timetable(SQLite::Database& database, studio::TermId id);
std::optional<studio::Lesson> read_lesson(SQLite::Database& database, studio::LessonId id);
std::vector<studio::Lesson> read_lessons(SQLite::Database& database, Days days);
std::vector<studio::Lesson> read_lessons(SQLite::Database& database, studio::StudentId id, Days days);
std::vector<studio::Lesson> read_lessons(SQLite::Database& database, studio::GroupId id, Days days);
std::vector<studio::Lesson> read_lessons_owed(SQLite::Database& database);
std::vector<studio::Routine> read_routines(SQLite::Database& database);
std::optional<studio::Routine> read_routine(SQLite::Database& database, studio::RoutineId id);
std::optional<studio::Assignment> read_assignment(SQLite::Database& database, studio::AssignmentId id);
std::vector<studio::Assignment> read_assignments(SQLite::Database& database, studio::StudentId id);
std::vector<studio::Assignment> read_assignments(SQLite::Database& database, studio::GroupId id);
std::vector<studio::Assignment> read_assignments(SQLite::Database& database, studio::RoutineId id,
                                                 studio::Date on);
std::vector<studio::PracticeEntry> read_practice(SQLite::Database& database, studio::StudentId id, Days days);

/// The groups that a student was ever of, with the days, in no particular order.
struct Membership {
    studio::GroupId group;
    studio::Date from;
    std::optional<studio::Date> until;
};
std::vector<Membership> read_memberships(SQLite::Database& database, studio::StudentId id);
/// The last that was kept before that day.
std::optional<studio::Lesson> read_last_kept(SQLite::Database& database, studio::StudentId id,
                                             studio::Date before);
std::optional<studio::Lesson> read_last_kept(SQLite::Database& database, studio::GroupId id,
                                             studio::Date before);

}  // namespace lowledger::store
