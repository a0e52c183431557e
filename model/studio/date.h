#pragma once

#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace lowledger::studio {

/// A civil date of the Gregorian calendar, no zone. The one place that Boost.Date_Time is used behind.
class Date {
  public:
    /// Throws Refusal for a date that does not exist, or years outside 1900..2199.
    Date(int year, int month, int day);
    [[nodiscard]] int year() const;
    [[nodiscard]] int month() const;
    [[nodiscard]] int day() const;
    /// 1 = Monday .. 7 = Sunday (ISO 8601).
    [[nodiscard]] int weekday() const;

    /// "2026-11-25".
    [[nodiscard]] std::string iso() const;
    /// Reads that form only; empty for anything else.
    static std::optional<Date> parse_iso(std::string_view text);

    constexpr auto operator<=>(const Date&) const = default;
    friend Date operator+(Date date, int days);
    friend Date operator-(Date date, int days);
    /// Days from `b` to `a`.
    friend int operator-(Date a, Date b);

  private:
    explicit constexpr Date(int day_number) : day_number_(day_number) {}
    /// Days in the Gregorian day numbering of Boost.
    int day_number_;
};

/// The same day of the month `months` later; where that month is too short, its last day (31 January + 1 = 28
/// or 29 February; 28 February + 1 = 28 March: the end of a month does not stick). For recurring dates count
/// from the first.
Date months_later(Date date, int months);

}  // namespace lowledger::studio
