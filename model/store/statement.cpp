#include "model/store/statement.h"

#include <cmath>
#include <fmt/format.h>

#include "model/store/studio_file.h"

namespace lowledger::store {

Statement::Statement(SQLite::Database& database, std::string_view sql)
    : file_(database.getFilename()), statement_(database, std::string(sql)) {}

std::int64_t Statement::integer(int column) {
    const SQLite::Column value = statement_.getColumn(column);
    if (!value.isInteger()) damaged(column);
    return value.getInt64();
}

double Statement::real(int column) {
    const SQLite::Column value = statement_.getColumn(column);
    if (!value.isFloat()) damaged(column);
    return value.getDouble();
}

std::string Statement::text(int column) {
    const SQLite::Column value = statement_.getColumn(column);
    if (!value.isText()) damaged(column);
    return value.getString();
}

std::vector<unsigned char> Statement::bytes(int column) {
    const SQLite::Column value = statement_.getColumn(column);
    if (!value.isBlob()) damaged(column);
    const auto* first = static_cast<const unsigned char*>(value.getBlob());
    return {first, first + value.getBytes()};
}

studio::Date Statement::date(int column) {
    const std::optional<studio::Date> date = studio::Date::parse_iso(text(column));
    if (!date) damaged(column);
    return *date;
}

void Statement::damaged(int column) {
    throw StudioDamaged(
        fmt::format("The studio {} holds a value under \"{}\" that cannot be right: go back to a "
                    "copy, or open it with the version of the program that wrote it.",
                    file_, statement_.getColumnName(column)));
}

void Statement::bind(int place, double value) {
    if (!std::isfinite(value)) {
        throw units::Refusal(
            fmt::format("{} was not changed: a value is not a finite number. Type it again.", file_));
    }
    statement_.bind(place, value);
}

void Statement::bind(int place, std::string_view value) {
    statement_.bind(place, std::string(value));
}

void Statement::bind(int place, const std::vector<unsigned char>& bytes) {
    statement_.bind(place, bytes.data(), static_cast<int>(bytes.size()));
}

}  // namespace lowledger::store
