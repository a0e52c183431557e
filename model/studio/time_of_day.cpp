#include "model/studio/time_of_day.h"

#include <fmt/format.h>

#include "model/units/number_text.h"
#include "model/units/refusal.h"

namespace lowledger::studio {

TimeOfDay::TimeOfDay(int hour, int minute) : minutes_(60 * hour + minute) {
    if (hour < 0 || hour > 23 || minute < 0 || minute > 59) {
        throw units::Refusal(
            fmt::format("{}:{:02} is no time of day: type one between 0:00 and 23:59.", hour, minute));
    }
}

TimeOfDay TimeOfDay::from_minutes(int minutes) {
    if (minutes < 0 || minutes >= 24 * 60) {
        throw units::Refusal(fmt::format("{} minutes after midnight is no time of that day: it has 0 to {}.",
                                         minutes, 24 * 60 - 1));
    }
    return {minutes / 60, minutes % 60};
}

std::string TimeOfDay::text() const {
    return fmt::format("{:02}:{:02}", hour(), minute());
}

std::optional<TimeOfDay> TimeOfDay::parse(std::string_view typed) {
    const auto mark = typed.find_first_of(":.");
    std::string_view hour = typed.substr(0, mark);
    std::string_view minute = mark == std::string_view::npos ? std::string_view("0") : typed.substr(mark + 1);
    if (mark == std::string_view::npos && (typed.size() == 3 || typed.size() == 4)) {
        hour = typed.substr(0, typed.size() - 2);
        minute = typed.substr(typed.size() - 2);
    } else if (mark != std::string_view::npos && minute.size() != 2) {
        return std::nullopt;
    }
    const auto is_number = [](std::string_view text) {
        return !text.empty() && text.size() <= 2 &&
               text.find_first_not_of("0123456789") == std::string_view::npos;
    };
    if (!is_number(hour) || !is_number(minute)) return std::nullopt;
    const int h = units::parse_integer(hour).value_or(-1);
    const int m = units::parse_integer(minute).value_or(-1);
    if (h < 0 || h > 23 || m < 0 || m > 59) return std::nullopt;
    return TimeOfDay(h, m);
}

}  // namespace lowledger::studio
