#pragma once

#include <SQLiteCpp/Database.h>
#include <vector>

#include "model/studio/overviews.h"

/// What the program's places show, read together. Several statements each: run them inside one transaction.
namespace lowledger::store {

std::vector<studio::SheetHead> read_last_sheets(SQLite::Database& database);
std::vector<studio::LessonAhead> read_day(SQLite::Database& database, studio::Date on);
studio::Overdue read_overdue(SQLite::Database& database, studio::Date today);
studio::Belongings read_belongings(SQLite::Database& database, studio::StudentId id);

}  // namespace lowledger::store
