#pragma once

#include <SQLiteCpp/Database.h>
#include <optional>
#include <string_view>
#include <vector>

#include "model/studio/own_words.h"
#include "model/studio/records.h"

/// Records out of the tables. Several statements each: run them inside one transaction.
namespace lowledger::store {

studio::StudioFacts read_facts(SQLite::Database& database);
std::vector<studio::OwnText> read_own_texts(SQLite::Database& database);
std::optional<studio::HeadPicture> read_head_picture(SQLite::Database& database);
std::vector<studio::Student> read_students(SQLite::Database& database);
std::optional<studio::Student> read_student(SQLite::Database& database, studio::StudentId id);
std::vector<studio::Horn> read_horns(SQLite::Database& database);
std::optional<studio::Horn> read_horn(SQLite::Database& database, studio::HornId id);
std::vector<studio::SlidePosition> read_slide_history(SQLite::Database& database, studio::HornId id);
std::vector<studio::HornUse> read_horn_uses(SQLite::Database& database);
std::vector<studio::HornUse> read_horn_uses(SQLite::Database& database, studio::StudentId id);
std::vector<studio::HornUse> read_horn_uses(SQLite::Database& database, studio::HornId id);
std::vector<studio::TuningSheet> read_sheets(SQLite::Database& database, studio::StudentId id);
std::vector<studio::TuningSheet> read_sheets(SQLite::Database& database, studio::HornId id);
std::optional<studio::TuningSheet> read_sheet(SQLite::Database& database, studio::TuningSheetId id);
std::vector<studio::GivenSettings> read_given_settings(SQLite::Database& database, studio::StudentId id);
std::vector<studio::GivenSettings> read_given_settings(SQLite::Database& database, studio::HornId id);

}  // namespace lowledger::store
