#pragma once

#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "model/store/statement.h"
#include "model/studio/file_words.h"

/// Fields of records as columns: one column each, but an amount of money, which takes two.
namespace lowledger::store {

/// Several short texts, each on a line. Throws Refusal for an empty one and for one of several lines.
std::string as_lines(const std::vector<std::string>& lines);
std::vector<std::string> from_lines(const std::string& text);

std::string as_words(const std::vector<studio::Level>& levels);
/// Empty where a word is none.
std::optional<std::vector<studio::Level>> levels_from_words(const std::string& text);

/// The value or values that are bound for a field.
template <typename Field>
auto bound(const Field& field) {
    return std::tuple<const Field&>(field);
}
inline auto bound(const std::optional<studio::Money>& money) {
    return std::tuple(money ? std::optional(money->cents) : std::nullopt,
                      money ? std::optional(money->currency) : std::nullopt);
}
inline auto bound(const std::vector<std::string>& lines) {
    return std::tuple(as_lines(lines));
}
inline auto bound(const std::vector<studio::Level>& levels) {
    return std::tuple(as_words(levels));
}

/// Reads a field from `column` on and moves `column` behind it. StudioDamaged where it cannot be right.
void take(Statement& row, int& column, std::string& field);
void take(Statement& row, int& column, bool& field);
void take(Statement& row, int& column, int& field);
void take(Statement& row, int& column, studio::Date& field);
void take(Statement& row, int& column, studio::TimeOfDay& field);
void take(Statement& row, int& column, std::chrono::minutes& field);
void take(Statement& row, int& column, studio::Weekdays& field);
void take(Statement& row, int& column, std::vector<std::string>& field);
void take(Statement& row, int& column, std::vector<studio::Level>& field);
void take(Statement& row, int& column, std::optional<studio::Money>& field);
void take(Statement& row, int& column, std::optional<studio::Date>& field);
void take(Statement& row, int& column, std::optional<std::chrono::minutes>& field);
void take(Statement& row, int& column, std::optional<units::Cents>& field);
void take(Statement& row, int& column, studio::Level& field);
void take(Statement& row, int& column, std::optional<units::Accidentals>& field);
void take(Statement& row, int& column, std::optional<studio::AtHome>& field);
void take(Statement& row, int& column, studio::StudentEvent::Kind& field);
void take(Statement& row, int& column, studio::Upkeep::Work& field);
void take(Statement& row, int& column, studio::Lesson::State& field);
void take(Statement& row, int& column, studio::Attendance::State& field);
void take(Statement& row, int& column, studio::Assignment::End& field);

template <typename Record>
void take(Statement& row, int& column, studio::Id<Record>& field) {
    field = row.id<studio::Id<Record>>(column++);
}
template <typename Record>
void take(Statement& row, int& column, std::optional<studio::Id<Record>>& field) {
    field = row.optional(column++, [&](int at) { return row.id<studio::Id<Record>>(at); });
}

}  // namespace lowledger::store
