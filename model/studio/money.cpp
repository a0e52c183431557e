#include "model/studio/money.h"

#include <charconv>
#include <fmt/format.h>

namespace lowledger::studio {
namespace {

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && text.front() == ' ')
        text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ')
        text.remove_suffix(1);
    return text;
}

std::size_t digits_in(std::string_view text) {
    const auto end = text.find_first_not_of("0123456789");
    return end == std::string_view::npos ? text.size() : end;
}

std::int64_t number(std::string_view digits) {
    std::int64_t value = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return value;
}

}  // namespace

std::string text(const Money& money) {
    const std::int64_t size = money.cents < 0 ? -money.cents : money.cents;
    return fmt::format("{}{}.{:02}{}{}", money.cents < 0 ? "-" : "", size / 100, size % 100,
                       money.currency.empty() ? "" : " ", money.currency);
}

std::optional<Money> parse_money(std::string_view typed, std::string_view currency) {
    constexpr std::size_t most_digits = 9;
    std::string_view rest = trimmed(typed);
    const bool negative = rest.starts_with('-');
    if (negative) rest.remove_prefix(1);
    const std::size_t whole = digits_in(rest);
    if (whole == 0 || whole > most_digits) return std::nullopt;
    std::int64_t cents = 100 * number(rest.substr(0, whole));
    rest.remove_prefix(whole);
    if (rest.starts_with('.') || rest.starts_with(',')) {
        rest.remove_prefix(1);
        const std::size_t decimals = digits_in(rest);
        if (decimals == 0 || decimals > 2) return std::nullopt;
        cents += number(rest.substr(0, decimals)) * (decimals == 1 ? 10 : 1);
        rest.remove_prefix(decimals);
    }
    rest = trimmed(rest);
    if (rest.find_first_of("0123456789.,") != std::string_view::npos) return std::nullopt;
    return Money{.cents = negative ? -cents : cents,
                 .currency = std::string(rest.empty() ? trimmed(currency) : rest)};
}

}  // namespace lowledger::studio
