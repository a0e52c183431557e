#include "model/store/rows.h"

namespace lowledger::store {

std::vector<std::string> split_columns(std::string_view columns) {
    constexpr std::string_view between = ", ";
    std::vector<std::string> names;
    for (std::size_t at = 0; at < columns.size();) {
        const auto end = std::min(columns.find(between, at), columns.size());
        names.emplace_back(columns.substr(at, end - at));
        at = end + between.size();
    }
    return names;
}

std::string insert_sql(std::string_view table, std::string_view columns) {
    std::string places;
    for (std::size_t place = 1; place <= split_columns(columns).size(); ++place)
        places += fmt::format("{}?{}", places.empty() ? "" : ", ", place);
    return fmt::format("INSERT INTO {} ({}) VALUES ({})", table, columns, places);
}

std::string update_sql(std::string_view table, std::string_view columns) {
    std::string settings;
    int place = 2;
    for (const std::string& column : split_columns(columns))
        settings += fmt::format("{}{} = ?{}", settings.empty() ? "" : ", ", column, place++);
    return fmt::format("UPDATE {} SET {} WHERE id = ?1", table, settings);
}

void require_found(SQLite::Database& database, int records, std::string_view what) {
    if (records > 0) return;
    throw units::Refusal(fmt::format("The change was not filed in {}: the {} is no longer there.",
                                     database.getFilename(), what));
}

}  // namespace lowledger::store
