#include "model/store/book_in.h"

#include <set>

#include "model/store/book_out.h"
#include "model/store/book_queries.h"
#include "model/store/rows.h"
#include "model/studio/due.h"

namespace lowledger::store {
namespace {

using studio::Assignment;
using studio::AssignmentId;
using studio::Group;
using studio::GroupId;
using studio::HornId;
using studio::Lesson;
using studio::LessonId;
using studio::Loan;
using studio::LoanId;
using studio::Mouthpiece;
using studio::MouthpieceId;
using studio::Piece;
using studio::PieceId;
using studio::PracticeEntry;
using studio::PracticeEntryId;
using studio::Routine;
using studio::RoutineId;
using studio::StudentEvent;
using studio::StudentEventId;
using studio::StudentId;
using studio::Term;
using studio::TermId;
using studio::TimetableSlot;
using studio::TimetableSlotId;
using studio::Upkeep;
using studio::UpkeepId;

/// Removes every record whose id the statement finds for the owner.
template <typename Id, typename Owner>
void remove_each(SQLite::Database& database, std::string_view ids, Owner owner) {
    Statement rows(database, ids);
    const auto found = every(rows.with(owner), [](Statement& row) { return row.id<Id>(0); });
    for (const Id id : found)
        remove(database, id);
}

template <typename... Values>
bool is_so(SQLite::Database& database, std::string_view sql, const Values&... values) {
    Statement row(database, sql);
    row.with(values...).step();
    return row.flag(0);
}

void refuse_lent_twice(SQLite::Database& database, const Loan& loan) {
    for (const Loan& other : read_loans(database, loan.horn)) {
        if (other.id == loan.id || !studio::share_a_day(loan.from, loan.until, other.from, other.until))
            continue;
        throw units::Refusal(fmt::format(
            "The loan was not filed in {}: the horn is with another loan from {}{}. File its return first.",
            database.getFilename(), other.from.iso(),
            other.until ? fmt::format(" until {}", other.until->iso()) : std::string(" on")));
    }
}

void refuse_shared_days(SQLite::Database& database, const Term& term) {
    for (const Term& other : read_terms(database)) {
        if (other.id == term.id ||
            !studio::share_a_day(term.first, term.last + 1, other.first, other.last + 1))
            continue;
        throw units::Refusal(
            fmt::format("The term {} was not filed in {}: it shares days with {}, which goes from {} to {}.",
                        term.name, database.getFilename(), other.name, other.first.iso(), other.last.iso()));
    }
}

void file_holidays(SQLite::Database& database, TermId id, const Term& term) {
    Statement file(
        database,
        "INSERT INTO holiday (term_id, place, first_date, last_date, name) VALUES (?1, ?2, ?3, ?4, ?5)");
    int place = 0;
    for (const studio::Holiday& holiday : term.holidays)
        file.with(id, place++, holiday.first, holiday.last, holiday.name).run();
}

void file_members(SQLite::Database& database, GroupId id, const Group& group) {
    Statement file(database,
                   "INSERT INTO group_member (group_id, place, student_id, from_date, until_date) "
                   "VALUES (?1, ?2, ?3, ?4, ?5)");
    int place = 0;
    for (const studio::GroupMember& member : group.members)
        file.with(id, place++, member.student, member.from, member.until).run();
}

void file_attendance(SQLite::Database& database, LessonId id, const Lesson& lesson) {
    Statement file(database,
                   "INSERT INTO attendance (lesson_id, student_id, place, state) VALUES (?1, ?2, ?3, ?4)");
    if (lesson.student && !lesson.attendance.empty()) {
        throw units::Refusal(
            fmt::format("The lesson of {} was not filed in {}: attendance is taken in a group's lesson; of a "
                        "student's lesson say whether it was kept.",
                        lesson.on.iso(), database.getFilename()));
    }
    std::set<StudentId> called;
    int place = 0;
    for (const studio::Attendance& entry : lesson.attendance) {
        if (!called.insert(entry.student).second) {
            throw units::Refusal(
                fmt::format("The lesson of {} was not filed in {}: a student is called twice. Keep one of "
                            "the two entries.",
                            lesson.on.iso(), database.getFilename()));
        }
        file.with(id, entry.student, place++, entry.state).run();
    }
}

void drop_owned_mouthpieces(SQLite::Database& database, StudentId owner) {
    Statement rows(database, queries::mouthpieces_owned_by);
    const auto owned = every(rows.with(owner), [](Statement& row) { return row.id<MouthpieceId>(0); });
    for (const MouthpieceId id : owned) {
        if (is_so(database, queries::others_borrowed_mouthpiece, id, owner)) {
            throw units::Refusal(
                fmt::format("The student was not removed from {}: mouthpiece {} is theirs and others have "
                            "borrowed it. Give it another owner first, or archive the student.",
                            database.getFilename(), read_mouthpiece(database, id)->mark));
        }
        remove(database, id);
    }
}

}  // namespace

StudentEventId insert(SQLite::Database& database, const StudentEvent& event) {
    return insert_row(database, event);
}
void replace(SQLite::Database& database, const StudentEvent& event) {
    replace_row(database, event);
}
void remove(SQLite::Database& database, StudentEventId id) {
    remove_row(database, id);
}

PieceId insert(SQLite::Database& database, const Piece& piece) {
    return insert_row(database, piece);
}
void replace(SQLite::Database& database, const Piece& piece) {
    replace_row(database, piece);
}
void remove(SQLite::Database& database, PieceId id) {
    remove_row(database, id);
}

MouthpieceId insert(SQLite::Database& database, const Mouthpiece& mouthpiece) {
    return insert_row(database, mouthpiece);
}
void replace(SQLite::Database& database, const Mouthpiece& mouthpiece) {
    replace_row(database, mouthpiece);
}
void remove(SQLite::Database& database, MouthpieceId id) {
    run(database, queries::drop_upkeep_of_mouthpiece, id);
    run(database, queries::forget_mouthpiece_of_loans, id);
    remove_row(database, id);
}

UpkeepId insert(SQLite::Database& database, const Upkeep& upkeep) {
    return insert_row(database, upkeep);
}
void replace(SQLite::Database& database, const Upkeep& upkeep) {
    replace_row(database, upkeep);
}
void remove(SQLite::Database& database, UpkeepId id) {
    remove_row(database, id);
}

LoanId insert(SQLite::Database& database, const Loan& loan) {
    Loan fresh = loan;
    fresh.id = {};
    refuse_lent_twice(database, fresh);
    return insert_row(database, fresh);
}
void replace(SQLite::Database& database, const Loan& loan) {
    refuse_lent_twice(database, loan);
    replace_row(database, loan);
}
void remove(SQLite::Database& database, LoanId id) {
    remove_row(database, id);
}

TermId insert(SQLite::Database& database, const Term& term) {
    Term fresh = term;
    fresh.id = {};
    refuse_shared_days(database, fresh);
    const TermId id = insert_row(database, fresh);
    file_holidays(database, id, fresh);
    return id;
}
void replace(SQLite::Database& database, const Term& term) {
    refuse_shared_days(database, term);
    replace_row(database, term);
    run(database, queries::drop_holidays, term.id);
    file_holidays(database, term.id, term);
}
void remove(SQLite::Database& database, TermId id) {
    for (const TimetableSlot& slot : read_timetable(database, id))
        remove(database, slot.id);
    run(database, queries::drop_holidays, id);
    remove_row(database, id);
}

GroupId insert(SQLite::Database& database, const Group& group) {
    const GroupId id = insert_row(database, group);
    file_members(database, id, group);
    return id;
}
void replace(SQLite::Database& database, const Group& group) {
    replace_row(database, group);
    run(database, queries::drop_members, group.id);
    file_members(database, group.id, group);
}
void remove(SQLite::Database& database, GroupId id) {
    remove_each<TimetableSlotId>(database, queries::slots_of_group, id);
    remove_each<LessonId>(database, queries::lessons_with_group, id);
    remove_each<AssignmentId>(database, queries::assignments_with_group, id);
    run(database, queries::drop_members, id);
    remove_row(database, id);
}

TimetableSlotId insert(SQLite::Database& database, const TimetableSlot& slot) {
    return insert_row(database, slot);
}
void replace(SQLite::Database& database, const TimetableSlot& slot) {
    replace_row(database, slot);
}
void remove(SQLite::Database& database, TimetableSlotId id) {
    remove_each<LessonId>(database, queries::planned_of_slot, id);
    run(database, queries::forget_slot_of_lessons, id);
    remove_row(database, id);
}

LessonId insert(SQLite::Database& database, const Lesson& lesson) {
    const LessonId id = insert_row(database, lesson);
    file_attendance(database, id, lesson);
    return id;
}
void replace(SQLite::Database& database, const Lesson& lesson) {
    replace_row(database, lesson);
    run(database, queries::drop_attendance, lesson.id);
    file_attendance(database, lesson.id, lesson);
}
void remove(SQLite::Database& database, LessonId id) {
    run(database, queries::forget_original_of_lessons, id);
    run(database, queries::drop_attendance, id);
    remove_row(database, id);
}

RoutineId insert(SQLite::Database& database, const Routine& routine) {
    return insert_row(database, routine);
}
void replace(SQLite::Database& database, const Routine& routine) {
    replace_row(database, routine);
}
void remove(SQLite::Database& database, RoutineId id) {
    if (is_so(database, queries::routine_is_assigned, id)) {
        throw units::Refusal(
            fmt::format("The routine was not removed from {}: it was given to a student or a group. Archive "
                        "it instead.",
                        database.getFilename()));
    }
    remove_row(database, id);
}

AssignmentId insert(SQLite::Database& database, const Assignment& assignment) {
    return insert_row(database, assignment);
}
void replace(SQLite::Database& database, const Assignment& assignment) {
    replace_row(database, assignment);
}
void remove(SQLite::Database& database, AssignmentId id) {
    run(database, queries::drop_practice_of_assignment, id);
    run(database, queries::forget_earlier_assignment, id);
    remove_row(database, id);
}

PracticeEntryId insert(SQLite::Database& database, const PracticeEntry& entry) {
    return insert_row(database, entry);
}
void replace(SQLite::Database& database, const PracticeEntry& entry) {
    replace_row(database, entry);
}
void remove(SQLite::Database& database, PracticeEntryId id) {
    remove_row(database, id);
}

void drop_book_of(SQLite::Database& database, StudentId id) {
    run(database, queries::drop_events_of_student, id);
    run(database, queries::drop_pieces_of_student, id);
    run(database, queries::drop_practice_of_student, id);
    remove_each<AssignmentId>(database, queries::assignments_alone_of_student, id);
    run(database, queries::drop_attendance_of_student, id);
    remove_each<TimetableSlotId>(database, queries::slots_of_student, id);
    remove_each<LessonId>(database, queries::lessons_alone_of_student, id);
    run(database, queries::drop_memberships_of_student, id);
    run(database, queries::drop_loans_of_student, id);
    drop_owned_mouthpieces(database, id);
}

void drop_book_of(SQLite::Database& database, HornId id) {
    run(database, queries::drop_upkeep_of_horn, id);
    run(database, queries::drop_loans_of_horn, id);
    run(database, queries::forget_horn_of_mouthpieces, id);
}

}  // namespace lowledger::store
