#include "model/studio/date.h"

#include <algorithm>
#include <array>
#include <boost/date_time/gregorian/gregorian_types.hpp>
#include <charconv>
#include <fmt/format.h>

#include "model/units/refusal.h"

namespace lowledger::studio {
namespace {

using boost::gregorian::gregorian_calendar;

constexpr int first_year = 1900;
constexpr int last_year = 2199;
constexpr std::array<std::string_view, 12> month_names = {"January",   "February", "March",    "April",
                                                          "May",       "June",     "July",     "August",
                                                          "September", "October",  "November", "December"};

bool year_and_month_allowed(int year, int month) {
    return first_year <= year && year <= last_year && 1 <= month && month <= 12;
}

int days_in_month(int year, int month) {
    return gregorian_calendar::end_of_month_day(static_cast<unsigned short>(year),
                                                static_cast<unsigned short>(month));
}

int checked_day_number(int year, int month, int day) {
    if (!year_and_month_allowed(year, month)) {
        throw units::Refusal(
            fmt::format("{:04}-{:02}-{:02} is not a date that can be kept: years go from {} "
                        "to {}, months from 1 to 12.",
                        year, month, day, first_year, last_year));
    }
    const int last_day = days_in_month(year, month);
    if (day < 1 || day > last_day) {
        throw units::Refusal(fmt::format("{:04}-{:02}-{:02} is not a date: {} {} has {} days.", year, month,
                                         day, month_names.at(static_cast<std::size_t>(month) - 1), year,
                                         last_day));
    }
    return static_cast<int>(gregorian_calendar::day_number(
        gregorian_calendar::ymd_type(static_cast<unsigned short>(year), static_cast<unsigned short>(month),
                                     static_cast<unsigned short>(day))));
}

gregorian_calendar::ymd_type parts(int day_number) {
    return gregorian_calendar::from_day_number(static_cast<gregorian_calendar::date_int_type>(day_number));
}

std::optional<int> digits(std::string_view text) {
    if (!std::ranges::all_of(text, [](char c) { return '0' <= c && c <= '9'; })) return std::nullopt;
    int value = 0;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

}  // namespace

Date::Date(int year, int month, int day) : day_number_(checked_day_number(year, month, day)) {}

int Date::year() const {
    return parts(day_number_).year;
}

int Date::month() const {
    return parts(day_number_).month;
}

int Date::day() const {
    return parts(day_number_).day;
}

int Date::weekday() const {
    const int sunday_is_0 = gregorian_calendar::day_of_week(parts(day_number_));
    return sunday_is_0 == 0 ? 7 : sunday_is_0;
}

std::string Date::iso() const {
    return fmt::format("{:04}-{:02}-{:02}", year(), month(), day());
}

std::optional<Date> Date::parse_iso(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto year = digits(text.substr(0, 4));
    const auto month = digits(text.substr(5, 2));
    const auto day = digits(text.substr(8, 2));
    if (!year || !month || !day) return std::nullopt;
    if (!year_and_month_allowed(*year, *month)) return std::nullopt;
    if (*day < 1 || *day > days_in_month(*year, *month)) return std::nullopt;
    return Date(*year, *month, *day);
}

Date operator+(Date date, int days) {
    static const Date first(first_year, 1, 1);
    static const Date last(last_year, 12, 31);
    if (days > last - date || days < first - date) {
        throw units::Refusal(
            fmt::format("{} days from {} is not a date that can be kept: years go from {} to {}.", days,
                        date.iso(), first_year, last_year));
    }
    return Date(date.day_number_ + days);
}

Date operator-(Date date, int days) {
    return date + -days;
}

int operator-(Date a, Date b) {
    return a.day_number_ - b.day_number_;
}

Date months_later(Date date, int months) {
    const int months_from_year_0 = date.year() * 12 + (date.month() - 1) + months;
    const int year = months_from_year_0 / 12;
    const int month = months_from_year_0 % 12 + 1;
    if (!year_and_month_allowed(year, month)) return Date(year, month, date.day());
    return Date(year, month, std::min(date.day(), days_in_month(year, month)));
}

}  // namespace lowledger::studio
