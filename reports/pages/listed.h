#pragma once

#include <string>
#include <vector>

namespace lowledger::pages {

/// Those that are not empty, with commas: "Year 7, Ms Tull".
inline std::string listed(const std::vector<std::string>& texts) {
    std::string all;
    for (const auto& text : texts) {
        if (text.empty()) continue;
        if (!all.empty()) all += ", ";
        all += text;
    }
    return all;
}

}  // namespace lowledger::pages
