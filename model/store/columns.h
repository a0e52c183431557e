#pragma once

#include "model/store/sql_text.h"

/// The columns of each table of records besides `id`, in the order in which tables.h lists the fields.
namespace lowledger::store::columns {

inline constexpr SqlText student =
    "name, called, group_name, level, tolerance_cents, remarks, archived, reader, accidentals, year, "
    "at_home, "
    "guardian_name, guardian_phone, guardian_e_mail, goals, since_date";
inline constexpr SqlText horn =
    "kind_id, kind_text, mark, owner_student_id, maker_and_model, serial_number, remarks, archived, "
    "inventory_tag, belongs_to, case_text, locker, accessories, condition, value_money, value_currency, "
    "bought_on_date, bought_for_money, bought_for_currency";
inline constexpr SqlText student_event = "student_id, on_date, kind, remarks";
inline constexpr SqlText piece = "student_id, title, composer, part, from_date, until_date, remarks";
inline constexpr SqlText mouthpiece =
    "mark, size, horn_id, owner_student_id, kept_in, condition, value_money, value_currency, remarks, "
    "archived";
inline constexpr SqlText upkeep =
    "horn_id, mouthpiece_id, work, noted_on_date, done_on_date, what, done_by, cost_money, cost_currency, "
    "next_due_date, disinfected";
inline constexpr SqlText loan =
    "horn_id, student_id, mouthpiece_id, from_date, until_date, due_date, condition_out, condition_in, "
    "accessories, signed_on_date, remarks";
inline constexpr SqlText term = "name, first_date, last_date";
inline constexpr SqlText group = "name, remarks, archived";
inline constexpr SqlText timetable_slot =
    "term_id, student_id, group_id, weekday, starts_minute, length_minutes, every_weeks, from_date, "
    "until_date, room";
inline constexpr SqlText lesson =
    "student_id, group_id, slot_id, on_date, starts_minute, length_minutes, room, state, make_up_owed, "
    "instead_of_lesson_id, done, next, private_remark";
inline constexpr SqlText routine =
    "key, title, aim, steps, dose, length_minutes, levels, horns, music, remarks, archived";
inline constexpr SqlText assignment =
    "routine_id, student_id, group_id, from_date, until_date, weekdays, amount, remarks, ending, "
    "follows_assignment_id";
inline constexpr SqlText practice_entry = "student_id, on_date, assignment_id, length_minutes, remarks";

}  // namespace lowledger::store::columns
