#include "model/acoustics/valve_set.h"

#include <bit>

namespace lowledger::acoustics {

std::vector<int> ValveSet::valves() const {
    std::vector<int> down;
    for (int valve = 1; valve <= 8; ++valve) {
        if (contains(valve)) down.push_back(valve);
    }
    return down;
}

int ValveSet::count() const {
    return std::popcount(bits_);
}

std::string ValveSet::text() const {
    if (empty()) return "0";
    std::string out;
    for (const int valve : valves())
        out += static_cast<char>('0' + valve);
    return out;
}

std::optional<ValveSet> ValveSet::parse(std::string_view text) {
    if (text == "0") return ValveSet{};
    if (text.empty()) return std::nullopt;
    ValveSet set;
    for (const char digit : text) {
        if (digit < '1' || digit > '8' || set.contains(digit - '0')) return std::nullopt;
        set = set.with(digit - '0');
    }
    return set;
}

}  // namespace lowledger::acoustics
