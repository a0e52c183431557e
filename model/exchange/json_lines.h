#pragma once

#include <nlohmann/json.hpp>
#include <string>

namespace lowledger::exchange {

/// An object as text, one line for each member and for each element of a member that is a list: short enough
/// to keep, plain enough to read and compare.
std::string json_lines(const nlohmann::ordered_json& json);

}  // namespace lowledger::exchange
