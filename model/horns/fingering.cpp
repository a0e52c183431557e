#include "model/horns/fingering.h"

#include <cstddef>

namespace lowledger::horns {
namespace {

std::string label_of(int valve, std::span<const std::string> labels) {
    const auto index = static_cast<std::size_t>(valve - 1);
    return index < labels.size() ? labels[index] : std::to_string(valve);
}

int valve_count(std::span<const std::string> labels) {
    return labels.empty() ? 8 : static_cast<int>(labels.size());
}

/// Takes the longest label that `text` starts with, so that "Gb" is not read as "G".
std::optional<int> take_valve(std::string_view& text, std::span<const std::string> labels) {
    std::optional<int> found;
    std::size_t longest = 0;
    for (int valve = 1; valve <= valve_count(labels); ++valve) {
        const std::string label = label_of(valve, labels);
        if (text.starts_with(label) && label.size() > longest) {
            found = valve;
            longest = label.size();
        }
    }
    text.remove_prefix(longest);
    return found;
}

/// The valves of `text`, each once and each after `separator`; empty if it holds anything else.
std::optional<acoustics::ValveSet> take_valves(std::string_view text, std::string_view separator,
                                               std::span<const std::string> labels) {
    acoustics::ValveSet down;
    while (!text.empty()) {
        if (!text.starts_with(separator)) return std::nullopt;
        text.remove_prefix(separator.size());
        const auto valve = take_valve(text, labels);
        if (!valve || down.contains(*valve)) return std::nullopt;
        down = down.with(*valve);
    }
    return down;
}

}  // namespace

std::string file_text(const Fingering& fingering, std::span<const std::string> labels) {
    std::string text;
    std::string_view separator;
    if (fingering.position > 0) {
        text = "p" + std::to_string(fingering.position);
        separator = "+";
    } else if (fingering.valves.empty()) {
        return "0";
    }
    for (const int valve : fingering.valves.valves()) {
        text += separator;
        text += label_of(valve, labels);
    }
    return text;
}

std::optional<Fingering> parse_fingering(std::string_view text, std::span<const std::string> labels) {
    if (text == "0") return Fingering{};
    if (text.size() >= 2 && text.front() == 'p') {
        const int position = text[1] - '0';
        if (position < 1 || position > last_position) return std::nullopt;
        const auto valves = take_valves(text.substr(2), "+", labels);
        if (!valves) return std::nullopt;
        return Fingering{*valves, position};
    }
    const auto valves = take_valves(text, "", labels);
    if (!valves || valves->empty()) return std::nullopt;
    return Fingering{*valves, 0};
}

}  // namespace lowledger::horns
