#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace lowledger::studio {

/// An amount as whole cents (hundredths) of a currency.
struct Money {
    std::int64_t cents = 0;
    /// As the teacher writes it: "EUR", "$". May be empty.
    std::string currency{};
    bool operator==(const Money&) const = default;
};

/// "1250.50 EUR"; "0.05" where no currency is said.
std::string text(const Money& money);

/// Understands "12", "12.5", "12,50", "-3.20", each with or without a currency after it; `currency` is taken
/// where none was typed. Empty for anything else, more than two decimals, or a billion and more.
std::optional<Money> parse_money(std::string_view typed, std::string_view currency = {});

}  // namespace lowledger::studio
