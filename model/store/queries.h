#pragma once

#include <array>
#include <string_view>

#include "model/store/columns.h"

/// Every statement that looks for records, together, so that a test can hold that each goes by an index. The
/// columns of a record's queries are the same and in the order that its reader takes them.
namespace lowledger::store::queries {

inline constexpr std::string_view facts =
    "SELECT name, teacher, school, a4_hz, usual_room_celsius, paper, accidentals, naming, currency FROM "
    "studio WHERE "
    "id = 1";

inline constexpr std::string_view own_texts = "SELECT sentence, text FROM studio_text ORDER BY sentence";
inline constexpr std::string_view head_picture = "SELECT type, bytes FROM studio_picture WHERE id = 1";

inline constexpr auto student_columns = "SELECT id, " + columns::student + " FROM student ";
inline constexpr auto students = student_columns + "ORDER BY archived, name COLLATE NOCASE, id";
inline constexpr auto student = student_columns + "WHERE id = ?1";

inline constexpr auto horn_columns = "SELECT id, " + columns::horn + " FROM horn ";
inline constexpr auto horns = horn_columns + "ORDER BY archived, mark COLLATE NOCASE, id";
inline constexpr auto horn = horn_columns + "WHERE id = ?1";
inline constexpr std::string_view horns_owned_by =
    "SELECT id FROM horn WHERE owner_student_id = ?1 ORDER BY id";
inline constexpr std::string_view horn_slides =
    "SELECT slide, least_mm, travel_mm, stuck, place FROM horn_slide WHERE horn_id = ?1";

inline constexpr std::string_view slide_history =
    "SELECT id, horn_id, slide, on_date, position_mm, origin FROM slide_position WHERE horn_id = ?1 "
    "ORDER BY on_date, id";

inline constexpr std::string_view horn_uses =
    "SELECT id, student_id, horn_id, from_date, until_date FROM horn_use ORDER BY from_date, id";
inline constexpr std::string_view horn_uses_of_student =
    "SELECT id, student_id, horn_id, from_date, until_date FROM horn_use WHERE student_id = ?1 "
    "ORDER BY from_date, id";
inline constexpr std::string_view horn_uses_of_horn =
    "SELECT id, student_id, horn_id, from_date, until_date FROM horn_use WHERE horn_id = ?1 "
    "ORDER BY from_date, id";

inline constexpr std::string_view sheet =
    "SELECT id, student_id, horn_id, on_date, mouthpiece, warm, tuner_seen, mute, room_celsius, tuner_a4_hz, "
    "remarks FROM tuning_sheet WHERE id = ?1";
inline constexpr std::string_view sheets_of_student =
    "SELECT id, student_id, horn_id, on_date, mouthpiece, warm, tuner_seen, mute, room_celsius, tuner_a4_hz, "
    "remarks FROM tuning_sheet WHERE student_id = ?1 ORDER BY on_date DESC, id DESC";
inline constexpr std::string_view sheets_of_horn =
    "SELECT id, student_id, horn_id, on_date, mouthpiece, warm, tuner_seen, mute, room_celsius, tuner_a4_hz, "
    "remarks FROM tuning_sheet WHERE horn_id = ?1 ORDER BY on_date DESC, id DESC";
inline constexpr std::string_view sheet_positions =
    "SELECT slide, position_mm FROM sheet_position WHERE sheet_id = ?1";
inline constexpr std::string_view readings =
    "SELECT note_midi, valves, hand_position, partial, take, cents, place FROM reading WHERE sheet_id = ?1";

inline constexpr std::string_view settings_of_student =
    "SELECT id, student_id, horn_id, sheet_id, on_date, engine, json, moved_on_date FROM given_settings "
    "WHERE student_id = ?1 ORDER BY on_date DESC, id DESC";
inline constexpr std::string_view settings_of_horn =
    "SELECT id, student_id, horn_id, sheet_id, on_date, engine, json, moved_on_date FROM given_settings "
    "WHERE horn_id = ?1 ORDER BY on_date DESC, id DESC";

/// Whether anyone but student ?2 has something filed under horn ?1.
inline constexpr std::string_view others_on_horn =
    "SELECT EXISTS (SELECT 1 FROM tuning_sheet WHERE horn_id = ?1 AND student_id <> ?2)"
    " OR EXISTS (SELECT 1 FROM horn_use WHERE horn_id = ?1 AND student_id <> ?2)"
    " OR EXISTS (SELECT 1 FROM given_settings WHERE horn_id = ?1 AND student_id <> ?2)";

inline constexpr std::string_view drop_slide_positions =
    "DELETE FROM slide_position WHERE horn_id = ?1 AND slide = ?2";
inline constexpr std::string_view drop_all_slide_positions = "DELETE FROM slide_position WHERE horn_id = ?1";
inline constexpr std::string_view drop_slide = "DELETE FROM horn_slide WHERE horn_id = ?1 AND slide = ?2";
inline constexpr std::string_view drop_all_slides = "DELETE FROM horn_slide WHERE horn_id = ?1";
inline constexpr std::string_view drop_uses_of_student = "DELETE FROM horn_use WHERE student_id = ?1";
inline constexpr std::string_view drop_uses_of_horn = "DELETE FROM horn_use WHERE horn_id = ?1";
inline constexpr std::string_view drop_settings_of_student =
    "DELETE FROM given_settings WHERE student_id = ?1";
inline constexpr std::string_view drop_settings_of_horn = "DELETE FROM given_settings WHERE horn_id = ?1";
inline constexpr std::string_view forget_sheet_of_settings =
    "UPDATE given_settings SET sheet_id = NULL WHERE sheet_id = ?1";
inline constexpr std::string_view drop_sheet_positions = "DELETE FROM sheet_position WHERE sheet_id = ?1";
inline constexpr std::string_view drop_readings = "DELETE FROM reading WHERE sheet_id = ?1";

inline constexpr auto all = std::to_array<std::string_view>({facts,
                                                             own_texts,
                                                             head_picture,
                                                             students,
                                                             student,
                                                             horns,
                                                             horn,
                                                             horns_owned_by,
                                                             horn_slides,
                                                             slide_history,
                                                             horn_uses,
                                                             horn_uses_of_student,
                                                             horn_uses_of_horn,
                                                             sheet,
                                                             sheets_of_student,
                                                             sheets_of_horn,
                                                             sheet_positions,
                                                             readings,
                                                             settings_of_student,
                                                             settings_of_horn,
                                                             others_on_horn,
                                                             drop_slide_positions,
                                                             drop_all_slide_positions,
                                                             drop_slide,
                                                             drop_all_slides,
                                                             drop_uses_of_student,
                                                             drop_uses_of_horn,
                                                             drop_settings_of_student,
                                                             drop_settings_of_horn,
                                                             forget_sheet_of_settings,
                                                             drop_sheet_positions,
                                                             drop_readings});

}  // namespace lowledger::store::queries
