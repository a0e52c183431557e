#pragma once

#include <tuple>

#include "model/store/columns.h"
#include "model/store/field.h"
#include "model/studio/timetable.h"

/// How each record stands in its table. Lists of a record that have tables of their own are not among the
/// fields.
namespace lowledger::store {

/// `name` of the table, the `noun` that a sentence has for the record, its `columns` and, in the same order,
/// the record's `fields`. `blank` is a record to read into.
template <typename Record>
struct Table;

/// Stands in a blank record until the date is read.
inline const studio::Date no_date(2000, 1, 1);

template <>
struct Table<studio::Student> {
    static constexpr std::string_view name = "student";
    static constexpr std::string_view noun = "student";
    static constexpr std::string_view columns = store::columns::student;
    static studio::Student blank() { return {}; }
    static auto fields(auto& r) {
        return std::tie(r.name, r.called, r.group, r.level, r.tolerance, r.remarks, r.archived, r.reader,
                        r.accidentals, r.year, r.at_home, r.guardian.name, r.guardian.phone,
                        r.guardian.e_mail, r.goals, r.since);
    }
};

template <>
struct Table<studio::Horn> {
    static constexpr std::string_view name = "horn";
    static constexpr std::string_view noun = "horn";
    static constexpr std::string_view columns = store::columns::horn;
    static studio::Horn blank() { return {}; }
    static auto fields(auto& r) {
        return std::tie(r.kind_id, r.kind_text, r.mark, r.owner, r.maker_and_model, r.serial_number,
                        r.remarks, r.archived, r.inventory_tag, r.belongs_to, r.case_text, r.locker,
                        r.accessories, r.condition, r.value, r.bought_on, r.bought_for);
    }
};

template <>
struct Table<studio::StudentEvent> {
    static constexpr std::string_view name = "student_event";
    static constexpr std::string_view noun = "event";
    static constexpr std::string_view columns = store::columns::student_event;
    static studio::StudentEvent blank() { return {.id = {}, .student = {}, .on = no_date}; }
    static auto fields(auto& r) { return std::tie(r.student, r.on, r.kind, r.remarks); }
};

template <>
struct Table<studio::Piece> {
    static constexpr std::string_view name = "piece";
    static constexpr std::string_view noun = "piece";
    static constexpr std::string_view columns = store::columns::piece;
    static studio::Piece blank() { return {.id = {}, .student = {}, .title = {}, .from = no_date}; }
    static auto fields(auto& r) {
        return std::tie(r.student, r.title, r.composer, r.part, r.from, r.until, r.remarks);
    }
};

template <>
struct Table<studio::Mouthpiece> {
    static constexpr std::string_view name = "mouthpiece";
    static constexpr std::string_view noun = "mouthpiece";
    static constexpr std::string_view columns = store::columns::mouthpiece;
    static studio::Mouthpiece blank() { return {.id = {}, .mark = {}}; }
    static auto fields(auto& r) {
        return std::tie(r.mark, r.size, r.horn, r.owner, r.kept_in, r.condition, r.value, r.remarks,
                        r.archived);
    }
};

template <>
struct Table<studio::Upkeep> {
    static constexpr std::string_view name = "upkeep";
    static constexpr std::string_view noun = "entry of upkeep";
    static constexpr std::string_view columns = store::columns::upkeep;
    static studio::Upkeep blank() { return {.id = {}, .noted_on = no_date}; }
    static auto fields(auto& r) {
        return std::tie(r.horn, r.mouthpiece, r.work, r.noted_on, r.done_on, r.what, r.by, r.cost, r.next_due,
                        r.disinfected);
    }
};

template <>
struct Table<studio::Loan> {
    static constexpr std::string_view name = "loan";
    static constexpr std::string_view noun = "loan";
    static constexpr std::string_view columns = store::columns::loan;
    static studio::Loan blank() { return {.id = {}, .horn = {}, .student = {}, .from = no_date}; }
    static auto fields(auto& r) {
        return std::tie(r.horn, r.student, r.mouthpiece, r.from, r.until, r.due, r.condition_out,
                        r.condition_in, r.accessories, r.signed_on, r.remarks);
    }
};

template <>
struct Table<studio::Term> {
    static constexpr std::string_view name = "term";
    static constexpr std::string_view noun = "term";
    static constexpr std::string_view columns = store::columns::term;
    static studio::Term blank() { return {.id = {}, .name = {}, .first = no_date, .last = no_date}; }
    static auto fields(auto& r) { return std::tie(r.name, r.first, r.last); }
};

template <>
struct Table<studio::Group> {
    static constexpr std::string_view name = "student_group";
    static constexpr std::string_view noun = "group";
    static constexpr std::string_view columns = store::columns::group;
    static studio::Group blank() { return {.id = {}, .name = {}}; }
    static auto fields(auto& r) { return std::tie(r.name, r.remarks, r.archived); }
};

template <>
struct Table<studio::TimetableSlot> {
    static constexpr std::string_view name = "timetable_slot";
    static constexpr std::string_view noun = "lesson of the timetable";
    static constexpr std::string_view columns = store::columns::timetable_slot;
    static studio::TimetableSlot blank() { return {.id = {}, .term = {}}; }
    static auto fields(auto& r) {
        return std::tie(r.term, r.student, r.group, r.weekday, r.starts, r.length, r.every_weeks, r.from,
                        r.until, r.room);
    }
};

template <>
struct Table<studio::Lesson> {
    static constexpr std::string_view name = "lesson";
    static constexpr std::string_view noun = "lesson";
    static constexpr std::string_view columns = store::columns::lesson;
    static studio::Lesson blank() { return {.id = {}, .on = no_date}; }
    static auto fields(auto& r) {
        return std::tie(r.student, r.group, r.slot, r.on, r.starts, r.length, r.room, r.state, r.make_up_owed,
                        r.instead_of, r.done, r.next, r.private_remark);
    }
};

template <>
struct Table<studio::Routine> {
    static constexpr std::string_view name = "routine";
    static constexpr std::string_view noun = "routine";
    static constexpr std::string_view columns = store::columns::routine;
    static studio::Routine blank() { return {.id = {}, .title = {}}; }
    static auto fields(auto& r) {
        return std::tie(r.key, r.title, r.aim, r.steps, r.dose, r.length, r.levels, r.horns, r.music,
                        r.remarks, r.archived);
    }
};

template <>
struct Table<studio::Assignment> {
    static constexpr std::string_view name = "assignment";
    static constexpr std::string_view noun = "assignment";
    static constexpr std::string_view columns = store::columns::assignment;
    static studio::Assignment blank() { return {.id = {}, .routine = {}, .from = no_date}; }
    static auto fields(auto& r) {
        return std::tie(r.routine, r.student, r.group, r.from, r.until, r.days, r.amount, r.remarks, r.end,
                        r.follows);
    }
};

template <>
struct Table<studio::PracticeEntry> {
    static constexpr std::string_view name = "practice_entry";
    static constexpr std::string_view noun = "entry of practice";
    static constexpr std::string_view columns = store::columns::practice_entry;
    static studio::PracticeEntry blank() { return {.id = {}, .student = {}, .on = no_date}; }
    static auto fields(auto& r) { return std::tie(r.student, r.on, r.assignment, r.length, r.remarks); }
};

}  // namespace lowledger::store
