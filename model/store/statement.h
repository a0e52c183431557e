#pragma once

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "model/studio/date.h"
#include "model/studio/file_words.h"
#include "model/studio/ids.h"
#include "model/studio/time_of_day.h"
#include "model/units/celsius.h"
#include "model/units/hertz.h"
#include "model/units/quantity.h"

namespace lowledger::store {

/// A prepared statement that speaks the records' types. SQLite reads NULL as 0 and ""; here NULL is an empty
/// optional, and NULL or another type where a value must be is StudioDamaged.
class Statement {
  public:
    Statement(SQLite::Database& database, std::string_view sql);

    /// Starts over with these values for ?1, ?2, ... Throws Refusal for a number that is not finite.
    template <typename... Values>
    Statement& with(const Values&... values) {
        statement_.tryReset();
        int place = 0;
        (bind(++place, values), ...);
        return *this;
    }
    /// To the next row; false when there is none.
    bool step() { return statement_.executeStep(); }
    /// Runs a statement that has no rows; returns how many records it changed.
    int run() { return statement_.exec(); }

    [[nodiscard]] std::int64_t integer(int column);
    [[nodiscard]] int small(int column) { return static_cast<int>(integer(column)); }
    [[nodiscard]] bool flag(int column) { return integer(column) != 0; }
    [[nodiscard]] double real(int column);
    [[nodiscard]] std::string text(int column);
    [[nodiscard]] std::vector<unsigned char> bytes(int column);
    [[nodiscard]] studio::Date date(int column);
    template <typename Id>
    [[nodiscard]] Id id(int column) {
        return Id{integer(column)};
    }
    /// What `read` makes of a column that is not NULL.
    template <typename Read>
    [[nodiscard]] auto optional(int column, Read read) -> std::optional<decltype(read(column))> {
        if (statement_.isColumnNull(column)) return std::nullopt;
        return read(column);
    }
    [[nodiscard]] std::optional<studio::Date> optional_date(int column) {
        return optional(column, [this](int c) { return date(c); });
    }

    /// Throws StudioDamaged: this row holds a value that the program never files.
    [[noreturn]] void damaged(int column);

  private:
    void bind(int place, std::int64_t value) { statement_.bind(place, value); }
    void bind(int place, int value) { statement_.bind(place, value); }
    void bind(int place, bool value) { statement_.bind(place, value ? 1 : 0); }
    void bind(int place, double value);
    void bind(int place, std::string_view value);
    void bind(int place, const std::vector<unsigned char>& bytes);
    void bind(int place, const studio::Date& value) { bind(place, std::string_view(value.iso())); }
    void bind(int place, studio::TimeOfDay value) { bind(place, value.minutes()); }
    void bind(int place, std::chrono::minutes value) {
        statement_.bind(place, static_cast<std::int64_t>(value.count()));
    }
    void bind(int place, studio::Weekdays value) { bind(place, value.bits()); }
    template <typename Choice>
    requires std::is_enum_v<Choice>
    void bind(int place, Choice choice) { bind(place, studio::file_word(choice)); }
    void bind(int place, units::Celsius value) { bind(place, value.value()); }
    void bind(int place, units::Hertz value) { bind(place, value.value()); }
    template <typename Unit>
    void bind(int place, units::Quantity<Unit> value) {
        bind(place, value.value());
    }
    template <typename Record>
    void bind(int place, studio::Id<Record> id) {
        bind(place, id.number);
    }
    template <typename Value>
    void bind(int place, const std::optional<Value>& value) {
        if (value) {
            bind(place, *value);
        } else {
            statement_.bind(place);
        }
    }

    std::string file_;
    SQLite::Statement statement_;
};

}  // namespace lowledger::store
