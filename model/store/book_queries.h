#pragma once

#include <array>

#include "model/store/columns.h"

/// The statements that look for records of the teaching week, as queries.h has those of horns and tuning.
namespace lowledger::store::queries {

inline constexpr auto event_columns = "SELECT id, " + columns::student_event + " FROM student_event ";
inline constexpr auto events_of_student = event_columns + "WHERE student_id = ?1 ORDER BY on_date, id";

inline constexpr auto piece_columns = "SELECT id, " + columns::piece + " FROM piece ";
inline constexpr auto pieces_of_student =
    piece_columns + "WHERE student_id = ?1 ORDER BY from_date DESC, id DESC";

inline constexpr auto mouthpiece_columns = "SELECT id, " + columns::mouthpiece + " FROM mouthpiece ";
inline constexpr auto mouthpieces = mouthpiece_columns + "ORDER BY archived, mark COLLATE NOCASE, id";
inline constexpr auto mouthpiece = mouthpiece_columns + "WHERE id = ?1";
inline constexpr SqlText mouthpieces_owned_by =
    "SELECT id FROM mouthpiece WHERE owner_student_id = ?1 ORDER BY id";

inline constexpr auto upkeep_columns = "SELECT id, " + columns::upkeep + " FROM upkeep ";
// The order comes from the reading side: a thing has few entries.
inline constexpr auto upkeep_of_horn = upkeep_columns + "WHERE horn_id = ?1";
inline constexpr auto upkeep_of_mouthpiece = upkeep_columns + "WHERE mouthpiece_id = ?1";
inline constexpr auto upkeep_to_do = upkeep_columns + "WHERE done_on_date IS NULL ORDER BY noted_on_date, id";
inline constexpr auto upkeep_due_again =
    upkeep_columns +
    "AS u WHERE done_on_date IS NOT NULL AND next_due_date <= ?1 AND NOT EXISTS ("
    "SELECT 1 FROM upkeep WHERE horn_id = u.horn_id AND work = u.work AND done_on_date > u.done_on_date) "
    "AND NOT EXISTS (SELECT 1 FROM upkeep WHERE mouthpiece_id = u.mouthpiece_id AND work = u.work "
    "AND done_on_date > u.done_on_date) ORDER BY next_due_date, id";

inline constexpr auto loan_columns = "SELECT id, " + columns::loan + " FROM loan ";
inline constexpr auto loan = loan_columns + "WHERE id = ?1";
inline constexpr auto loans_of_student =
    loan_columns + "WHERE student_id = ?1 ORDER BY from_date DESC, id DESC";
inline constexpr auto loans_of_horn = loan_columns + "WHERE horn_id = ?1 ORDER BY from_date DESC, id DESC";
inline constexpr auto loans_out = loan_columns + "WHERE until_date IS NULL ORDER BY due_date, id";
inline constexpr auto loans_overdue =
    loan_columns + "WHERE until_date IS NULL AND due_date < ?1 ORDER BY due_date, id";

inline constexpr auto term_columns = "SELECT id, " + columns::term + " FROM term ";
inline constexpr auto terms = term_columns + "ORDER BY first_date, id";
inline constexpr auto term = term_columns + "WHERE id = ?1";
inline constexpr SqlText holidays =
    "SELECT first_date, last_date, name FROM holiday WHERE term_id = ?1 ORDER BY place";

inline constexpr auto group_columns = "SELECT id, " + columns::group + " FROM student_group ";
inline constexpr auto groups = group_columns + "ORDER BY archived, name COLLATE NOCASE, id";
inline constexpr auto group = group_columns + "WHERE id = ?1";
inline constexpr SqlText members =
    "SELECT student_id, from_date, until_date FROM group_member WHERE group_id = ?1 ORDER BY place";
inline constexpr SqlText groups_of_student =
    "SELECT group_id, from_date, until_date FROM group_member WHERE student_id = ?1";

inline constexpr auto slot_columns = "SELECT id, " + columns::timetable_slot + " FROM timetable_slot ";
inline constexpr auto timetable = slot_columns + "WHERE term_id = ?1 ORDER BY weekday, starts_minute, id";
inline constexpr SqlText slots_of_student = "SELECT id FROM timetable_slot WHERE student_id = ?1 ORDER BY id";
inline constexpr SqlText slots_of_group = "SELECT id FROM timetable_slot WHERE group_id = ?1 ORDER BY id";

inline constexpr auto lesson_columns = "SELECT id, " + columns::lesson + " FROM lesson ";
inline constexpr auto lesson = lesson_columns + "WHERE id = ?1";
inline constexpr auto lessons_between =
    lesson_columns + "WHERE on_date BETWEEN ?1 AND ?2 ORDER BY on_date, starts_minute, id";
inline constexpr auto lessons_of_student =
    lesson_columns +
    "WHERE student_id = ?1 AND on_date BETWEEN ?2 AND ?3 ORDER BY on_date, starts_minute, id";
inline constexpr auto lessons_of_group =
    lesson_columns + "WHERE group_id = ?1 AND on_date BETWEEN ?2 AND ?3 ORDER BY on_date, starts_minute, id";
/// Those where the student was called though no longer, or not yet, of the group.
inline constexpr SqlText lessons_attended = "SELECT lesson_id FROM attendance WHERE student_id = ?1";
inline constexpr auto lessons_owed =
    lesson_columns + "WHERE make_up_owed = 1 ORDER BY on_date, starts_minute, id";
inline constexpr auto lessons_instead_of = lesson_columns + "WHERE instead_of_lesson_id = ?1 ORDER BY id";
inline constexpr auto last_kept_of_student = lesson_columns +
                                             "WHERE student_id = ?1 AND on_date < ?2 AND state = 'kept' "
                                             "ORDER BY on_date DESC, starts_minute DESC, id DESC LIMIT 1";
inline constexpr auto last_kept_of_group = lesson_columns +
                                           "WHERE group_id = ?1 AND on_date < ?2 AND state = 'kept' "
                                           "ORDER BY on_date DESC, starts_minute DESC, id DESC LIMIT 1";
inline constexpr SqlText attendance_of_lesson =
    "SELECT student_id, state, place FROM attendance WHERE lesson_id = ?1";
inline constexpr SqlText lessons_alone_of_student = "SELECT id FROM lesson WHERE student_id = ?1";
inline constexpr SqlText lessons_with_group = "SELECT id FROM lesson WHERE group_id = ?1";
inline constexpr SqlText planned_of_slot = "SELECT id FROM lesson WHERE slot_id = ?1 AND state = 'planned'";

inline constexpr auto routine_columns = "SELECT id, " + columns::routine + " FROM routine ";
inline constexpr auto routines = routine_columns + "ORDER BY archived, title COLLATE NOCASE, id";
inline constexpr auto routine = routine_columns + "WHERE id = ?1";
inline constexpr SqlText routine_is_assigned =
    "SELECT EXISTS (SELECT 1 FROM assignment WHERE routine_id = ?1)";

inline constexpr auto assignment_columns = "SELECT id, " + columns::assignment + " FROM assignment ";
inline constexpr auto assignment = assignment_columns + "WHERE id = ?1";
inline constexpr auto assignments_of_student =
    assignment_columns + "WHERE student_id = ?1 ORDER BY from_date DESC, id DESC";
inline constexpr auto assignments_of_group =
    assignment_columns + "WHERE group_id = ?1 ORDER BY from_date DESC, id DESC";
inline constexpr auto assignments_of_routine_on =
    assignment_columns +
    "WHERE routine_id = ?1 AND from_date <= ?2 AND (until_date IS NULL OR until_date > ?2) ORDER BY id";
inline constexpr SqlText assignments_alone_of_student = "SELECT id FROM assignment WHERE student_id = ?1";
inline constexpr SqlText assignments_with_group = "SELECT id FROM assignment WHERE group_id = ?1";

inline constexpr auto practice_columns = "SELECT id, " + columns::practice_entry + " FROM practice_entry ";
inline constexpr auto practice_of_student =
    practice_columns + "WHERE student_id = ?1 AND on_date BETWEEN ?2 AND ?3 ORDER BY on_date, id";

inline constexpr SqlText last_sheets =
    "SELECT sheet.id, sheet.student_id, sheet.horn_id, sheet.on_date FROM student "
    "CROSS JOIN tuning_sheet AS sheet ON sheet.id = (SELECT id FROM tuning_sheet "
    "WHERE student_id = student.id ORDER BY on_date DESC, id DESC LIMIT 1)";
inline constexpr SqlText last_sheet_of_student =
    "SELECT id, student_id, horn_id, on_date FROM tuning_sheet WHERE student_id = ?1 "
    "ORDER BY on_date DESC, id DESC LIMIT 1";
inline constexpr SqlText settings_wait =
    "SELECT moved_on_date IS NULL FROM given_settings WHERE student_id = ?1 "
    "ORDER BY on_date DESC, id DESC LIMIT 1";

// What goes with a record that is removed.

inline constexpr SqlText drop_events_of_student = "DELETE FROM student_event WHERE student_id = ?1";
inline constexpr SqlText drop_pieces_of_student = "DELETE FROM piece WHERE student_id = ?1";
inline constexpr SqlText drop_practice_of_student = "DELETE FROM practice_entry WHERE student_id = ?1";
inline constexpr SqlText drop_practice_of_assignment = "DELETE FROM practice_entry WHERE assignment_id = ?1";
inline constexpr SqlText forget_earlier_assignment =
    "UPDATE assignment SET follows_assignment_id = NULL WHERE follows_assignment_id = ?1";
inline constexpr SqlText drop_loans_of_student = "DELETE FROM loan WHERE student_id = ?1";
inline constexpr SqlText drop_loans_of_horn = "DELETE FROM loan WHERE horn_id = ?1";
inline constexpr SqlText drop_upkeep_of_horn = "DELETE FROM upkeep WHERE horn_id = ?1";
inline constexpr SqlText drop_upkeep_of_mouthpiece = "DELETE FROM upkeep WHERE mouthpiece_id = ?1";
inline constexpr SqlText forget_horn_of_mouthpieces =
    "UPDATE mouthpiece SET horn_id = NULL WHERE horn_id = ?1";
inline constexpr SqlText forget_mouthpiece_of_loans =
    "UPDATE loan SET mouthpiece_id = NULL WHERE mouthpiece_id = ?1";
inline constexpr SqlText drop_memberships_of_student = "DELETE FROM group_member WHERE student_id = ?1";
inline constexpr SqlText drop_members = "DELETE FROM group_member WHERE group_id = ?1";
inline constexpr SqlText drop_holidays = "DELETE FROM holiday WHERE term_id = ?1";
inline constexpr SqlText forget_slot_of_lessons = "UPDATE lesson SET slot_id = NULL WHERE slot_id = ?1";
inline constexpr SqlText forget_original_of_lessons =
    "UPDATE lesson SET instead_of_lesson_id = NULL WHERE instead_of_lesson_id = ?1";
inline constexpr SqlText drop_attendance = "DELETE FROM attendance WHERE lesson_id = ?1";
inline constexpr SqlText drop_attendance_of_student = "DELETE FROM attendance WHERE student_id = ?1";

/// Whether anyone but student ?2 has borrowed horn ?1.
inline constexpr SqlText others_borrowed =
    "SELECT EXISTS (SELECT 1 FROM loan WHERE horn_id = ?1 AND student_id <> ?2)";
inline constexpr SqlText others_borrowed_mouthpiece =
    "SELECT EXISTS (SELECT 1 FROM loan WHERE mouthpiece_id = ?1 AND student_id <> ?2)";

/// How much would go with student ?1.
inline constexpr SqlText belongings =
    "SELECT (SELECT count(*) FROM tuning_sheet WHERE student_id = ?1), "
    "(SELECT count(*) FROM given_settings WHERE student_id = ?1), "
    "(SELECT count(*) FROM lesson WHERE student_id = ?1), "
    "(SELECT count(*) FROM attendance WHERE student_id = ?1), "
    "(SELECT count(*) FROM assignment WHERE student_id = ?1), "
    "(SELECT count(*) FROM practice_entry WHERE student_id = ?1), "
    "(SELECT count(*) FROM loan WHERE student_id = ?1), "
    "(SELECT count(*) FROM horn_use WHERE student_id = ?1), "
    "(SELECT count(*) FROM piece WHERE student_id = ?1), "
    "(SELECT count(*) FROM student_event WHERE student_id = ?1), "
    "(SELECT count(*) FROM horn WHERE owner_student_id = ?1), "
    "(SELECT count(*) FROM mouthpiece WHERE owner_student_id = ?1)";

inline constexpr auto book = std::to_array<std::string_view>({events_of_student,
                                                              pieces_of_student,
                                                              mouthpieces,
                                                              mouthpiece,
                                                              mouthpieces_owned_by,
                                                              upkeep_of_horn,
                                                              upkeep_of_mouthpiece,
                                                              upkeep_to_do,
                                                              upkeep_due_again,
                                                              loan,
                                                              loans_of_student,
                                                              loans_of_horn,
                                                              loans_out,
                                                              loans_overdue,
                                                              terms,
                                                              term,
                                                              holidays,
                                                              groups,
                                                              group,
                                                              members,
                                                              groups_of_student,
                                                              timetable,
                                                              slots_of_student,
                                                              slots_of_group,
                                                              lesson,
                                                              lessons_between,
                                                              lessons_of_student,
                                                              lessons_of_group,
                                                              lessons_attended,
                                                              lessons_owed,
                                                              lessons_instead_of,
                                                              last_kept_of_student,
                                                              last_kept_of_group,
                                                              attendance_of_lesson,
                                                              lessons_alone_of_student,
                                                              lessons_with_group,
                                                              planned_of_slot,
                                                              routines,
                                                              routine,
                                                              routine_is_assigned,
                                                              assignment,
                                                              assignments_of_student,
                                                              assignments_of_group,
                                                              assignments_of_routine_on,
                                                              assignments_alone_of_student,
                                                              assignments_with_group,
                                                              practice_of_student,
                                                              last_sheet_of_student,
                                                              settings_wait,
                                                              drop_events_of_student,
                                                              drop_pieces_of_student,
                                                              drop_practice_of_student,
                                                              drop_practice_of_assignment,
                                                              forget_earlier_assignment,
                                                              drop_loans_of_student,
                                                              drop_loans_of_horn,
                                                              drop_upkeep_of_horn,
                                                              drop_upkeep_of_mouthpiece,
                                                              forget_horn_of_mouthpieces,
                                                              forget_mouthpiece_of_loans,
                                                              drop_memberships_of_student,
                                                              drop_members,
                                                              drop_holidays,
                                                              forget_slot_of_lessons,
                                                              forget_original_of_lessons,
                                                              drop_attendance,
                                                              drop_attendance_of_student,
                                                              others_borrowed,
                                                              others_borrowed_mouthpiece,
                                                              belongings,
                                                              last_sheets});

}  // namespace lowledger::store::queries
