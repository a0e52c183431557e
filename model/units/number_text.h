#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace lowledger::units {

/// Numbers in files and fields, the same in every locale. All of `text` must be the number (spaces around it
/// are ignored); a leading `+` and the minus sign U+2212 are understood; empty if it is no finite number.
std::optional<int> parse_integer(std::string_view text);
/// A decimal point or, as much of the world types it, one decimal comma.
std::optional<double> parse_decimal(std::string_view text);

/// With exactly `decimals` places and a point: "-7", "12.5". Never "-0".
std::string decimal_text(double value, int decimals);
/// The same with a sign always: "+12", "-7", and "0" alone without one. The minus is U+2212 when
/// `typographic`.
std::string signed_text(double value, int decimals, bool typographic = false);

}  // namespace lowledger::units
