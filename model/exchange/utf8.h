#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace lowledger::exchange {

/// Where `text` stops being UTF-8 as RFC 3629 (Yergeau 2003, section 4) has it: no overlong forms, no
/// surrogates, nothing above U+10FFFF. Empty if all of it is.
std::optional<std::size_t> first_bad_byte(std::string_view text);

}  // namespace lowledger::exchange
