#pragma once

#include <SQLiteCpp/Database.h>
#include <string_view>

#include "model/studio/own_words.h"
#include "model/studio/records.h"

/// Records into the tables, inside a transaction of the caller's. A `replace` or `remove` of what is not
/// there throws Refusal.
namespace lowledger::store {

/// The facts of a new studio.
void write_first(SQLite::Database& database, const studio::StudioFacts& facts);
void replace(SQLite::Database& database, const studio::StudioFacts& facts);

/// In place of what was there, if anything was. Removing what is not there is nothing.
void put(SQLite::Database& database, const studio::OwnText& text);
void remove_own_text(SQLite::Database& database, std::string_view sentence);
void put(SQLite::Database& database, const studio::HeadPicture& picture);
void remove_head_picture(SQLite::Database& database);

studio::StudentId insert(SQLite::Database& database, const studio::Student& student);
void replace(SQLite::Database& database, const studio::Student& student);
void remove(SQLite::Database& database, studio::StudentId id);

studio::HornId insert(SQLite::Database& database, const studio::Horn& horn);
void replace(SQLite::Database& database, const studio::Horn& horn);
void remove(SQLite::Database& database, studio::HornId id);

studio::SlidePositionId insert(SQLite::Database& database, const studio::SlidePosition& position);
void remove(SQLite::Database& database, studio::SlidePositionId id);

studio::HornUseId insert(SQLite::Database& database, const studio::HornUse& use);
void replace(SQLite::Database& database, const studio::HornUse& use);
void remove(SQLite::Database& database, studio::HornUseId id);

studio::TuningSheetId insert(SQLite::Database& database, const studio::TuningSheet& sheet);
void replace(SQLite::Database& database, const studio::TuningSheet& sheet);
void remove(SQLite::Database& database, studio::TuningSheetId id);

studio::GivenSettingsId insert(SQLite::Database& database, const studio::GivenSettings& settings);
void replace(SQLite::Database& database, const studio::GivenSettings& settings);
void remove(SQLite::Database& database, studio::GivenSettingsId id);

}  // namespace lowledger::store
