#pragma once

#include <SQLiteCpp/Database.h>
#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace lowledger::store {

/// In the header of every studio, so that any program can tell one: "Lwlg".
inline constexpr std::int64_t application_id = 0x4C776C67;

/// The tables that hold records, parents before children. What undo follows and `dump` shows.
inline constexpr std::array record_tables = {
    "studio",         "studio_text",   "studio_picture", "student",        "horn",    "horn_slide",
    "slide_position", "horn_use",      "tuning_sheet",   "sheet_position", "reading", "given_settings",
    "student_event",  "piece",         "mouthpiece",     "upkeep",         "loan",    "term",
    "holiday",        "student_group", "group_member",   "timetable_slot", "lesson",  "attendance",
    "routine",        "assignment",    "practice_entry"};

/// One step from schema version `version - 1` to `version`.
struct Migration {
    int version = 0;
    std::string_view name;
    std::string_view sql;
};

/// The migrations that are built in, versions 1, 2, ... without a gap.
std::vector<Migration> built_in_migrations();

int schema_version(SQLite::Database& database);

/// Takes the database to the newest of `migrations`, all in one transaction; a new file starts at version 0.
/// Throws SQLite::Exception, or StudioDamaged where records then refer to missing ones; nothing is changed
/// by then. Foreign keys are on afterwards.
void migrate(SQLite::Database& database, std::span<const Migration> migrations);

/// What SQLite's quick check and the foreign keys have to say; empty when sound.
std::vector<std::string> faults(SQLite::Database& database);

/// All records as SQL, a statement a line, in the order of tables and of their keys.
std::string dump_records(SQLite::Database& database);

}  // namespace lowledger::store
