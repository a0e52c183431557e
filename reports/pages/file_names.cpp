#include "reports/pages/file_names.h"

namespace lowledger::pages {

namespace {

constexpr std::size_t most_bytes = 120;

bool allowed(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte >= 0x20 && byte != 0x7F && std::string_view("/\\:*?\"<>|").find(c) == std::string_view::npos;
}

std::string without_edges(const std::string& text) {
    const auto first = text.find_first_not_of(" .");
    if (first == std::string::npos) return {};
    return text.substr(first, text.find_last_not_of(" .") - first + 1);
}

std::string lower(std::string text) {
    for (char& c : text)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return text;
}

}  // namespace

std::string safe_file_name(std::string_view title) {
    std::string name;
    for (const char c : title)
        name += allowed(c) ? c : '-';
    name = without_edges(name);
    if (name.size() > most_bytes) {
        std::size_t end = most_bytes;
        while (end > 0 && (static_cast<unsigned char>(name[end]) & 0xC0U) == 0x80U)
            --end;
        name = without_edges(name.substr(0, end));
    }
    return name.empty() ? "handout" : name;
}

std::string FileNames::next(std::string_view title) {
    const std::string plain = safe_file_name(title);
    std::string name = plain;
    for (int n = 2; !given_.insert(lower(name)).second; ++n)
        name = plain + " (" + std::to_string(n) + ")";
    return name;
}

}  // namespace lowledger::pages
