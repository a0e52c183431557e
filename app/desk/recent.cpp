#include "app/desk/recent.h"

#include <algorithm>
#include <fstream>
#include <string>

namespace lowledger::desk {
namespace {

std::filesystem::path list_file(const std::filesystem::path& data_folder) {
    return data_folder / "recent-studios";
}

}  // namespace

std::vector<std::filesystem::path> recent_studios(const std::filesystem::path& data_folder) {
    std::vector<std::filesystem::path> studios;
    std::ifstream file(list_file(data_folder));
    std::error_code ignored;
    for (std::string line; std::getline(file, line);)
        if (!line.empty() && std::filesystem::exists(line, ignored)) studios.emplace_back(line);
    return studios;
}

void remember_studio(const std::filesystem::path& data_folder, const std::filesystem::path& studio) {
    const auto path = std::filesystem::absolute(studio);
    auto studios = recent_studios(data_folder);
    std::erase(studios, path);
    studios.insert(studios.begin(), path);
    if (studios.size() > most_recent_studios) studios.resize(most_recent_studios);
    std::ofstream file(list_file(data_folder), std::ios::trunc);
    for (const auto& one : studios)
        file << one.string() << '\n';
}

}  // namespace lowledger::desk
