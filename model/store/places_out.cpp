#include "model/store/places_out.h"

#include <map>
#include <tuple>

#include "model/store/book_out.h"
#include "model/store/book_queries.h"
#include "model/store/records_out.h"
#include "model/store/rows.h"
#include "model/studio/calendar.h"
#include "model/studio/questions.h"

namespace lowledger::store {
namespace {

using studio::Date;
using studio::GroupId;
using studio::Lesson;
using studio::LessonAhead;
using studio::SheetHead;
using studio::StudentAhead;
using studio::StudentId;

SheetHead sheet_head_in(Statement& row) {
    return {.id = row.id<studio::TuningSheetId>(0),
            .student = row.id<StudentId>(1),
            .horn = row.id<studio::HornId>(2),
            .on = row.date(3)};
}

/// Reads what belongs to each student of a day, and each routine once.
class DayReader {
  public:
    DayReader(SQLite::Database& database, Date on) : database_(database), on_(on) {}

    LessonAhead ahead(Lesson lesson) {
        LessonAhead ahead{.lesson = std::move(lesson), .group_name = {}, .students = {}};
        if (ahead.lesson.student) add(ahead, *ahead.lesson.student);
        if (!ahead.lesson.group) return ahead;
        if (const auto group = read_group(database_, *ahead.lesson.group)) {
            ahead.group_name = group->name;
            for (const StudentId member : studio::members_on(*group, on_))
                add(ahead, member);
        }
        return ahead;
    }

  private:
    void add(LessonAhead& ahead, StudentId id) {
        if (auto student = read_student(database_, id)) ahead.students.push_back(about(std::move(*student)));
    }

    StudentAhead about(studio::Student student) {
        const StudentId id = student.id;
        StudentAhead ahead;
        ahead.student = std::move(student);
        ahead.horns = studio::horns_on(read_horn_uses(database_, id), id, on_);
        ahead.last = last_kept(id);
        for (studio::Assignment& given : read_assignments(database_, id))
            if (studio::holds_on(given, on_)) ahead.routines.push_back(with_routine(std::move(given)));
        Statement sheet(database_, queries::last_sheet_of_student);
        ahead.last_sheet = at_most_one(sheet.with(id), sheet_head_in);
        Statement settings(database_, queries::settings_wait);
        ahead.settings_wait = settings.with(id).step() && settings.flag(0);
        return ahead;
    }

    std::optional<Lesson> last_kept(StudentId id) {
        std::optional<Lesson> last = read_last_kept(database_, id, on_);
        for (const Membership& member : read_memberships(database_, id)) {
            if (!studio::holds_on(member.from, member.until, on_)) continue;
            std::optional<Lesson> of_group = read_last_kept(database_, member.group, on_);
            if (!of_group || of_group->on < member.from) continue;
            if (!last || std::tie(last->on, last->starts) < std::tie(of_group->on, of_group->starts))
                last = std::move(of_group);
        }
        return last;
    }

    studio::GivenRoutine with_routine(studio::Assignment given) {
        const auto [found, is_new] = routines_.try_emplace(given.routine);
        if (is_new) found->second = read_routine(database_, given.routine);
        studio::GivenRoutine result{.assignment = std::move(given), .title = {}, .dose = {}};
        if (found->second) {
            result.title = found->second->title;
            result.dose = found->second->dose;
        }
        return result;
    }

    SQLite::Database& database_;
    Date on_;
    std::map<studio::RoutineId, std::optional<studio::Routine>> routines_;
};

}  // namespace

std::vector<SheetHead> read_last_sheets(SQLite::Database& database) {
    Statement rows(database, queries::last_sheets);
    return every(rows, sheet_head_in);
}

std::vector<LessonAhead> read_day(SQLite::Database& database, Date on) {
    DayReader reader(database, on);
    std::vector<LessonAhead> day;
    for (Lesson& lesson : read_lessons(database, Days{on, on}))
        day.push_back(reader.ahead(std::move(lesson)));
    return day;
}

studio::Overdue read_overdue(SQLite::Database& database, Date today) {
    return {.loans = records<studio::Loan>(database, queries::loans_overdue, today),
            .due_again = records<studio::Upkeep>(database, queries::upkeep_due_again, today),
            .to_do = records<studio::Upkeep>(database, queries::upkeep_to_do)};
}

studio::Belongings read_belongings(SQLite::Database& database, StudentId id) {
    Statement row(database, queries::belongings);
    row.with(id).step();
    studio::Belongings all;
    int column = 0;
    for (int* count :
         {&all.sheets, &all.settings, &all.lessons, &all.attendances, &all.assignments, &all.practice_entries,
          &all.loans, &all.horn_uses, &all.pieces, &all.events, &all.horns, &all.mouthpieces})
        *count = row.small(column++);
    return all;
}

}  // namespace lowledger::store
