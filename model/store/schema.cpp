#include "model/store/schema.h"

#include <fmt/format.h>

#include "model/store/statement.h"
#include "model/store/studio_file.h"
#include "model/store/transactions.h"
#include "model/units/number_text.h"

#include "migration_files.h"

namespace lowledger::store {
namespace {

std::vector<std::string> foreign_key_faults(SQLite::Database& database) {
    std::vector<std::string> found;
    Statement check(database, "SELECT \"table\", parent FROM pragma_foreign_key_check");
    while (check.step())
        found.push_back(
            fmt::format("a record of {} names a missing record of {}", check.text(0), check.text(1)));
    return found;
}

/// An SQL expression that makes one INSERT statement of a row of `table`.
std::string row_as_sql(SQLite::Database& database, std::string_view table) {
    std::string values;
    std::string keys;
    Statement columns(database, "SELECT name FROM pragma_table_info(?1) ORDER BY cid");
    for (columns.with(table); columns.step();)
        values += fmt::format("{}quote(\"{}\")", values.empty() ? "" : " || ', ' || ", columns.text(0));
    Statement key_columns(database, "SELECT name FROM pragma_table_info(?1) WHERE pk > 0 ORDER BY pk");
    for (key_columns.with(table); key_columns.step();)
        keys += fmt::format("{}\"{}\"", keys.empty() ? "" : ", ", key_columns.text(0));
    return fmt::format("SELECT 'INSERT INTO {0} VALUES (' || {1} || ');' FROM \"{0}\" ORDER BY {2}", table,
                       values, keys);
}

}  // namespace

std::vector<Migration> built_in_migrations() {
    std::vector<Migration> migrations;
    for (const EmbeddedFile& file : migration_files()) {
        const int version = units::parse_integer(file.name.substr(0, file.name.find('_'))).value();
        migrations.push_back({version, file.name, file.text});
    }
    return migrations;
}

int schema_version(SQLite::Database& database) {
    Statement version(database, "PRAGMA user_version");
    version.step();
    return version.small(0);
}

void migrate(SQLite::Database& database, std::span<const Migration> migrations) {
    // A migration may rebuild a table that others refer to; the check below makes up for it.
    database.exec("PRAGMA foreign_keys = OFF");
    // Views that name the old table meanwhile do not mind.
    database.exec("PRAGMA legacy_alter_table = ON");
    {
        WriteTransaction transaction(database);
        const int from = schema_version(database);
        if (from == 0) database.exec(fmt::format("PRAGMA application_id = {}", application_id));
        for (const Migration& migration : migrations) {
            if (migration.version <= from) continue;
            database.exec(std::string(migration.sql));
            database.exec(fmt::format("PRAGMA user_version = {}", migration.version));
        }
        if (const auto found = foreign_key_faults(database); !found.empty()) {
            throw StudioDamaged(
                fmt::format("The studio {} could not be brought to this version of the program, "
                            "since {}: nothing was changed. Open it with the version that wrote "
                            "it, or go back to a copy.",
                            database.getFilename(), found.front()));
        }
        transaction.commit();
    }
    database.exec("PRAGMA legacy_alter_table = OFF");
    database.exec("PRAGMA foreign_keys = ON");
}

std::vector<std::string> faults(SQLite::Database& database) {
    std::vector<std::string> found;
    Statement check(database, "PRAGMA quick_check");
    while (check.step()) {
        if (std::string line = check.text(0); line != "ok") found.push_back(std::move(line));
    }
    if (!found.empty()) return found;
    return foreign_key_faults(database);
}

std::string dump_records(SQLite::Database& database) {
    std::string out;
    for (const char* table : record_tables) {
        Statement rows(database, row_as_sql(database, table));
        while (rows.step())
            out += rows.text(0) + '\n';
    }
    return out;
}

}  // namespace lowledger::store
