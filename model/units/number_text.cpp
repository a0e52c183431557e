#include "model/units/number_text.h"

#include <array>
#include <charconv>
#include <cmath>

namespace lowledger::units {
namespace {

constexpr std::string_view minus_sign = "\u2212";

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view spaces = " \t\r\n";
    const auto first = text.find_first_not_of(spaces);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(spaces) - first + 1);
}

/// Text that std::from_chars reads: no plus, an ASCII minus, a point.
std::string plain(std::string_view text) {
    std::string out(trimmed(text));
    if (out.starts_with(minus_sign)) out.replace(0, minus_sign.size(), "-");
    if (out.starts_with('+')) {
        out.erase(0, 1);
        if (out.starts_with('-') || out.starts_with('+')) return {};
    }
    return out;
}

template <typename Number>
std::optional<Number> parse_whole(const std::string& text) {
    Number value{};
    const char* end = text.data() + text.size();
    const auto [stop, error] = std::from_chars(text.data(), end, value);
    if (error != std::errc{} || stop != end) return std::nullopt;
    return value;
}

}  // namespace

std::optional<int> parse_integer(std::string_view text) {
    return parse_whole<int>(plain(text));
}

std::optional<double> parse_decimal(std::string_view text) {
    std::string out = plain(text);
    if (out.find_first_not_of("0123456789.,-") != std::string::npos) return std::nullopt;
    if (const auto comma = out.find(','); comma != std::string::npos) {
        if (out.find('.') != std::string::npos) return std::nullopt;
        out[comma] = '.';
    }
    const auto value = parse_whole<double>(out);
    if (!value || !std::isfinite(*value)) return std::nullopt;
    return value;
}

std::string decimal_text(double value, int decimals) {
    std::array<char, 350> buffer{};
    const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                            std::chars_format::fixed, decimals);
    if (error != std::errc{}) return {};
    std::string text(buffer.data(), end);
    if (text.starts_with('-') && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
    return text;
}

std::string signed_text(double value, int decimals, bool typographic) {
    std::string text = decimal_text(value, decimals);
    if (text.starts_with('-')) return typographic ? std::string(minus_sign) + text.substr(1) : text;
    return text.find_first_of("123456789") == std::string::npos ? text : "+" + text;
}

}  // namespace lowledger::units
