#pragma once

#include <filesystem>
#include <vector>

namespace lowledger::desk {

/// How many studios are remembered.
inline constexpr std::size_t most_recent_studios = 6;

/// The studios opened last that are still there, the last one first. Kept in a file of `data_folder`; one
/// that cannot be read counts as empty.
std::vector<std::filesystem::path> recent_studios(const std::filesystem::path& data_folder);

/// Puts a studio at the head of them. A folder that cannot be written loses only the memory.
void remember_studio(const std::filesystem::path& data_folder, const std::filesystem::path& studio);

}  // namespace lowledger::desk
