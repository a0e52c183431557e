#pragma once

#include <SQLiteCpp/Database.h>
#include <string>
#include <string_view>
#include <vector>

#include "model/studio/found.h"

namespace lowledger::store {

/// What was typed as a question to the index: every word must be there, each as the beginning of one. Empty
/// where there is no word in it.
std::string search_question(std::string_view typed);

/// At most `most` records with all of these words: those without a day first, then the newest.
std::vector<studio::Found> search_records(SQLite::Database& database, std::string_view typed, int most);

/// Brings the index up to date with the records that changed in this transaction.
void follow_in_search(SQLite::Database& database);

/// Takes the words of removed records out of the index's pages, which otherwise happens by and by.
void forget_removed_words(SQLite::Database& database);

}  // namespace lowledger::store
