#pragma once

#include <fmt/format.h>
#include <string>
#include <vector>

#include "model/store/tables.h"
#include "model/units/refusal.h"

/// A record's own row, in and out, by its `Table`.
namespace lowledger::store {

template <typename... Values>
int run(SQLite::Database& database, std::string_view sql, const Values&... values) {
    return Statement(database, sql).with(values...).run();
}

/// The columns one by one.
std::vector<std::string> split_columns(std::string_view columns);
/// "INSERT INTO t (a, b) VALUES (?1, ?2)".
std::string insert_sql(std::string_view table, std::string_view columns);
/// "UPDATE t SET a = ?2, b = ?3 WHERE id = ?1".
std::string update_sql(std::string_view table, std::string_view columns);
/// Throws Refusal where no record was changed: `what` is gone.
void require_found(SQLite::Database& database, int records, std::string_view what);

/// Calls `use` with the values that are bound for the record, in the order of its columns.
template <typename Record, typename Use>
auto with_values(const Record& record, Use use) {
    return std::apply(
        [&](const auto&... fields) { return std::apply(use, std::tuple_cat(bound(fields)...)); },
        Table<Record>::fields(record));
}

template <typename Record>
studio::Id<Record> insert_row(SQLite::Database& database, const Record& record) {
    with_values(record, [&](const auto&... values) {
        run(database, insert_sql(Table<Record>::name, Table<Record>::columns), values...);
    });
    return {database.getLastInsertRowid()};
}

template <typename Record>
void replace_row(SQLite::Database& database, const Record& record) {
    with_values(record, [&](const auto&... values) {
        const int records =
            run(database, update_sql(Table<Record>::name, Table<Record>::columns), record.id, values...);
        require_found(database, records, Table<Record>::noun);
    });
}

template <typename Record>
void remove_row(SQLite::Database& database, studio::Id<Record> id) {
    const int records = run(database, fmt::format("DELETE FROM {} WHERE id = ?1", Table<Record>::name), id);
    require_found(database, records, Table<Record>::noun);
}

/// The record in a row whose first column is the id and whose next ones are the table's.
template <typename Record>
Record record_in(Statement& row) {
    Record record = Table<Record>::blank();
    int column = 0;
    take(row, column, record.id);
    std::apply([&](auto&... fields) { (take(row, column, fields), ...); }, Table<Record>::fields(record));
    return record;
}

template <typename Read>
auto every(Statement& rows, Read&& read) {
    std::vector<decltype(read(rows))> found;
    while (rows.step())
        found.push_back(read(rows));
    return found;
}

template <typename Read>
auto at_most_one(Statement& rows, Read&& read) -> std::optional<decltype(read(rows))> {
    if (!rows.step()) return std::nullopt;
    return read(rows);
}

/// All records that the statement finds.
template <typename Record, typename... Values>
std::vector<Record> records(SQLite::Database& database, std::string_view sql, const Values&... values) {
    Statement rows(database, sql);
    return every(rows.with(values...), record_in<Record>);
}

template <typename Record, typename... Values>
std::optional<Record> record(SQLite::Database& database, std::string_view sql, const Values&... values) {
    Statement rows(database, sql);
    return at_most_one(rows.with(values...), record_in<Record>);
}

}  // namespace lowledger::store
