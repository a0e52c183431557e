#include "model/exchange/json_lines.h"

namespace lowledger::exchange {

std::string json_lines(const nlohmann::ordered_json& json) {
    std::string out = "{";
    for (const auto& [key, value] : json.items()) {
        out += (out.size() == 1 ? "\n  " : ",\n  ") + nlohmann::ordered_json(key).dump() + ": ";
        if (!value.is_array() || value.empty()) {
            out += value.dump();
            continue;
        }
        for (std::size_t i = 0; i < value.size(); ++i)
            out += (i == 0 ? "[\n    " : ",\n    ") + value[i].dump();
        out += "\n  ]";
    }
    return out + "\n}\n";
}

}  // namespace lowledger::exchange
