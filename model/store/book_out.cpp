#include "model/store/book_out.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "model/store/book_queries.h"
#include "model/store/rows.h"
#include "model/studio/due.h"

namespace lowledger::store {
namespace {

using studio::Assignment;
using studio::Attendance;
using studio::Date;
using studio::Group;
using studio::GroupId;
using studio::HornId;
using studio::Lesson;
using studio::LessonId;
using studio::Loan;
using studio::Mouthpiece;
using studio::MouthpieceId;
using studio::StudentId;
using studio::Term;
using studio::TermId;
using studio::Upkeep;

class TermReader {
  public:
    explicit TermReader(SQLite::Database& database) : holidays_(database, queries::holidays) {}
    Term operator()(Statement& row) {
        Term term = record_in<Term>(row);
        for (holidays_.with(term.id); holidays_.step();)
            term.holidays.push_back({holidays_.date(0), holidays_.date(1), holidays_.text(2)});
        return term;
    }

  private:
    Statement holidays_;
};

class GroupReader {
  public:
    explicit GroupReader(SQLite::Database& database) : members_(database, queries::members) {}
    Group operator()(Statement& row) {
        Group group = record_in<Group>(row);
        for (members_.with(group.id); members_.step();)
            group.members.push_back({members_.id<StudentId>(0), members_.date(1), members_.optional_date(2)});
        return group;
    }

  private:
    Statement members_;
};

class LessonReader {
  public:
    explicit LessonReader(SQLite::Database& database)
        : attendance_(database, queries::attendance_of_lesson) {}
    Lesson operator()(Statement& row) {
        Lesson lesson = record_in<Lesson>(row);
        if (lesson.group) lesson.attendance = attendance_of(lesson.id);
        return lesson;
    }

  private:
    std::vector<Attendance> attendance_of(LessonId id) {
        std::vector<std::pair<int, Attendance>> placed;
        for (attendance_.with(id); attendance_.step();) {
            Attendance entry;
            int column = 0;
            take(attendance_, column, entry.student);
            take(attendance_, column, entry.state);
            placed.emplace_back(attendance_.small(column), entry);
        }
        std::ranges::sort(placed, {}, &std::pair<int, Attendance>::first);
        std::vector<Attendance> called;
        called.reserve(placed.size());
        for (const auto& [place, entry] : placed)
            called.push_back(entry);
        return called;
    }

    Statement attendance_;
};

std::vector<Upkeep> oldest_first(std::vector<Upkeep> upkeep) {
    std::ranges::sort(upkeep, {}, [](const Upkeep& entry) {
        return std::tuple(entry.done_on.value_or(entry.noted_on), entry.id);
    });
    return upkeep;
}

std::vector<Assignment> newest_first(std::vector<Assignment> assignments) {
    std::ranges::sort(assignments, std::greater<>(),
                      [](const Assignment& entry) { return std::tuple(entry.from, entry.id); });
    return assignments;
}

}  // namespace

std::vector<studio::StudentEvent> read_events(SQLite::Database& database, StudentId id) {
    return records<studio::StudentEvent>(database, queries::events_of_student, id);
}

std::vector<studio::Piece> read_pieces(SQLite::Database& database, StudentId id) {
    return records<studio::Piece>(database, queries::pieces_of_student, id);
}

std::vector<Mouthpiece> read_mouthpieces(SQLite::Database& database) {
    return records<Mouthpiece>(database, queries::mouthpieces);
}

std::optional<Mouthpiece> read_mouthpiece(SQLite::Database& database, MouthpieceId id) {
    return record<Mouthpiece>(database, queries::mouthpiece, id);
}

std::vector<Upkeep> read_upkeep(SQLite::Database& database, HornId id) {
    return oldest_first(records<Upkeep>(database, queries::upkeep_of_horn, id));
}

std::vector<Upkeep> read_upkeep(SQLite::Database& database, MouthpieceId id) {
    return oldest_first(records<Upkeep>(database, queries::upkeep_of_mouthpiece, id));
}

std::vector<Loan> read_loans(SQLite::Database& database, StudentId id) {
    return records<Loan>(database, queries::loans_of_student, id);
}

std::vector<Loan> read_loans(SQLite::Database& database, HornId id) {
    return records<Loan>(database, queries::loans_of_horn, id);
}

std::vector<Loan> read_loans_out(SQLite::Database& database) {
    return records<Loan>(database, queries::loans_out);
}

std::optional<Loan> read_loan(SQLite::Database& database, studio::LoanId id) {
    return record<Loan>(database, queries::loan, id);
}

std::vector<Term> read_terms(SQLite::Database& database) {
    Statement rows(database, queries::terms);
    return every(rows, TermReader(database));
}

std::optional<Term> read_term(SQLite::Database& database, TermId id) {
    Statement rows(database, queries::term);
    return at_most_one(rows.with(id), TermReader(database));
}

std::vector<Group> read_groups(SQLite::Database& database) {
    Statement rows(database, queries::groups);
    return every(rows, GroupReader(database));
}

std::optional<Group> read_group(SQLite::Database& database, GroupId id) {
    Statement rows(database, queries::group);
    return at_most_one(rows.with(id), GroupReader(database));
}

std::vector<studio::TimetableSlot> read_timetable(SQLite::Database& database, TermId id) {
    return records<studio::TimetableSlot>(database, queries::timetable, id);
}

std::optional<Lesson> read_lesson(SQLite::Database& database, LessonId id) {
    Statement rows(database, queries::lesson);
    return at_most_one(rows.with(id), LessonReader(database));
}

std::vector<Lesson> read_lessons(SQLite::Database& database, Days days) {
    Statement rows(database, queries::lessons_between);
    return every(rows.with(days.first, days.last), LessonReader(database));
}

std::vector<Lesson> read_lessons(SQLite::Database& database, GroupId id, Days days) {
    Statement rows(database, queries::lessons_of_group);
    return every(rows.with(id, days.first, days.last), LessonReader(database));
}

std::vector<Lesson> read_lessons(SQLite::Database& database, StudentId id, Days days) {
    LessonReader reader(database);
    Statement own(database, queries::lessons_of_student);
    std::vector<Lesson> lessons = every(own.with(id, days.first, days.last), reader);
    std::set<LessonId> there;
    const auto add = [&](Lesson lesson) {
        if (there.insert(lesson.id).second) lessons.push_back(std::move(lesson));
    };
    for (const Membership& member : read_memberships(database, id)) {
        for (Lesson& lesson : read_lessons(database, member.group, days))
            if (studio::holds_on(member.from, member.until, lesson.on)) add(std::move(lesson));
    }
    Statement attended(database, queries::lessons_attended);
    const auto ids = every(attended.with(id), [](Statement& row) { return row.id<LessonId>(0); });
    Statement one(database, queries::lesson);
    for (const LessonId called : ids) {
        if (there.contains(called)) continue;
        std::optional<Lesson> lesson = at_most_one(one.with(called), reader);
        if (lesson && days.first <= lesson->on && lesson->on <= days.last) add(std::move(*lesson));
    }
    std::ranges::sort(lessons, std::greater<>(),
                      [](const Lesson& lesson) { return std::tuple(lesson.on, lesson.starts, lesson.id); });
    return lessons;
}

std::vector<Lesson> read_lessons_owed(SQLite::Database& database) {
    LessonReader reader(database);
    Statement owed(database, queries::lessons_owed);
    std::vector<Lesson> lessons = every(owed, reader);
    Statement instead(database, queries::lessons_instead_of);
    for (std::size_t i = 0, count = lessons.size(); i < count; ++i) {
        for (Lesson& lesson : every(instead.with(lessons[i].id), reader))
            if (!lesson.make_up_owed) lessons.push_back(std::move(lesson));
    }
    return lessons;
}

std::vector<studio::Routine> read_routines(SQLite::Database& database) {
    return records<studio::Routine>(database, queries::routines);
}

std::optional<studio::Routine> read_routine(SQLite::Database& database, studio::RoutineId id) {
    return record<studio::Routine>(database, queries::routine, id);
}

std::optional<Assignment> read_assignment(SQLite::Database& database, studio::AssignmentId id) {
    return record<Assignment>(database, queries::assignment, id);
}

std::vector<Assignment> read_assignments(SQLite::Database& database, GroupId id) {
    return records<Assignment>(database, queries::assignments_of_group, id);
}

std::vector<Assignment> read_assignments(SQLite::Database& database, StudentId id) {
    std::vector<Assignment> all = records<Assignment>(database, queries::assignments_of_student, id);
    std::set<studio::AssignmentId> there;
    for (const Membership& member : read_memberships(database, id)) {
        for (Assignment& given : read_assignments(database, member.group)) {
            if (!studio::share_a_day(member.from, member.until, given.from, given.until)) continue;
            if (there.insert(given.id).second) all.push_back(std::move(given));
        }
    }
    return newest_first(std::move(all));
}

std::vector<Assignment> read_assignments(SQLite::Database& database, studio::RoutineId id, studio::Date on) {
    return records<Assignment>(database, queries::assignments_of_routine_on, id, on);
}

std::vector<studio::PracticeEntry> read_practice(SQLite::Database& database, StudentId id, Days days) {
    return records<studio::PracticeEntry>(database, queries::practice_of_student, id, days.first, days.last);
}

std::vector<Membership> read_memberships(SQLite::Database& database, StudentId id) {
    Statement rows(database, queries::groups_of_student);
    return every(rows.with(id), [](Statement& row) {
        return Membership{row.id<GroupId>(0), row.date(1), row.optional_date(2)};
    });
}

std::optional<Lesson> read_last_kept(SQLite::Database& database, StudentId id, Date before) {
    Statement rows(database, queries::last_kept_of_student);
    return at_most_one(rows.with(id, before), LessonReader(database));
}

std::optional<Lesson> read_last_kept(SQLite::Database& database, GroupId id, Date before) {
    Statement rows(database, queries::last_kept_of_group);
    return at_most_one(rows.with(id, before), LessonReader(database));
}

}  // namespace lowledger::store
