#pragma once

#include <chrono>
#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace lowledger::studio {

/// A time on the clock on the wall, without a zone: "16:05".
class TimeOfDay {
  public:
    /// Midnight.
    constexpr TimeOfDay() = default;
    /// Throws Refusal outside 0:00 to 23:59.
    TimeOfDay(int hour, int minute);
    /// Minutes since midnight, 0 to 1439; throws Refusal outside.
    static TimeOfDay from_minutes(int minutes);

    [[nodiscard]] int hour() const { return minutes_ / 60; }
    [[nodiscard]] int minute() const { return minutes_ % 60; }
    /// Since midnight.
    [[nodiscard]] int minutes() const { return minutes_; }
    /// "16:05".
    [[nodiscard]] std::string text() const;
    /// Understands "16:05", "16.05", "1605", "16" and "9"; empty for anything else.
    static std::optional<TimeOfDay> parse(std::string_view typed);

    constexpr auto operator<=>(const TimeOfDay&) const = default;
    /// How long from `a` to `b` of the same day.
    friend std::chrono::minutes operator-(TimeOfDay b, TimeOfDay a) {
        return std::chrono::minutes(b.minutes_ - a.minutes_);
    }

  private:
    int minutes_ = 0;
};

}  // namespace lowledger::studio
