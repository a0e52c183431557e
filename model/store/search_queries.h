#pragma once

#include <array>

#include "model/store/sql_text.h"

namespace lowledger::store::queries {

inline constexpr SqlText search =
    "SELECT rowid, snippet(record_search, 0, '', '', '\u2026', 12) FROM record_search "
    "WHERE record_search MATCH ?1 ORDER BY rowid DESC LIMIT ?2";

inline constexpr SqlText stale_kinds = "SELECT DISTINCT kind FROM search_stale";
inline constexpr SqlText drop_stale_words =
    "DELETE FROM record_search WHERE rowid IN (SELECT search_id FROM search_stale)";
inline constexpr SqlText nothing_stale = "DELETE FROM search_stale";
inline constexpr SqlText merge_words = "INSERT INTO record_search (record_search) VALUES ('optimize')";

inline constexpr SqlText follow = "INSERT INTO record_search (rowid, text) SELECT search_id, text FROM ";
inline constexpr SqlText where_stale =
    "_words WHERE id IN (SELECT id FROM search_stale WHERE kind = ?1) AND text <> ''";
inline constexpr auto follow_student = follow + "student" + where_stale;
inline constexpr auto follow_horn = follow + "horn" + where_stale;
inline constexpr auto follow_mouthpiece = follow + "mouthpiece" + where_stale;
inline constexpr auto follow_group = follow + "student_group" + where_stale;
inline constexpr auto follow_routine = follow + "routine" + where_stale;
inline constexpr auto follow_lesson = follow + "lesson" + where_stale;
inline constexpr auto follow_sheet = follow + "tuning_sheet" + where_stale;
inline constexpr auto follow_piece = follow + "piece" + where_stale;
inline constexpr auto follow_event = follow + "student_event" + where_stale;
inline constexpr auto follow_upkeep = follow + "upkeep" + where_stale;
inline constexpr auto follow_loan = follow + "loan" + where_stale;
inline constexpr auto follow_assignment = follow + "assignment" + where_stale;
inline constexpr auto follow_practice = follow + "practice_entry" + where_stale;

/// Student and horn of a record.
inline constexpr SqlText owner_of_student = "SELECT id, NULL FROM student WHERE id = ?1";
inline constexpr SqlText owner_of_horn = "SELECT owner_student_id, id FROM horn WHERE id = ?1";
inline constexpr SqlText owner_of_mouthpiece =
    "SELECT owner_student_id, horn_id FROM mouthpiece WHERE id = ?1";
inline constexpr SqlText owner_of_lesson = "SELECT student_id, NULL FROM lesson WHERE id = ?1";
inline constexpr SqlText owner_of_sheet = "SELECT student_id, horn_id FROM tuning_sheet WHERE id = ?1";
inline constexpr SqlText owner_of_piece = "SELECT student_id, NULL FROM piece WHERE id = ?1";
inline constexpr SqlText owner_of_event = "SELECT student_id, NULL FROM student_event WHERE id = ?1";
inline constexpr SqlText owner_of_upkeep = "SELECT NULL, horn_id FROM upkeep WHERE id = ?1";
inline constexpr SqlText owner_of_loan = "SELECT student_id, horn_id FROM loan WHERE id = ?1";
inline constexpr SqlText owner_of_assignment = "SELECT student_id, NULL FROM assignment WHERE id = ?1";
inline constexpr SqlText owner_of_practice = "SELECT student_id, NULL FROM practice_entry WHERE id = ?1";

inline constexpr auto owners = std::to_array<std::string_view>(
    {owner_of_student, owner_of_horn, owner_of_mouthpiece, owner_of_lesson, owner_of_sheet, owner_of_piece,
     owner_of_event, owner_of_upkeep, owner_of_loan, owner_of_assignment, owner_of_practice});

}  // namespace lowledger::store::queries
