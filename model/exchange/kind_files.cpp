#include "model/exchange/kind_files.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <system_error>

#include "model/exchange/text_file.h"
#include "model/units/refusal.h"

namespace lowledger::exchange {

namespace {

namespace fs = std::filesystem;

std::vector<fs::path> kind_files_in(const fs::path& folder) {
    std::vector<fs::path> files;
    std::error_code error;
    if (!fs::is_directory(folder, error)) return files;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error))
        if (at->path().extension() == ".toml") files.push_back(at->path());
    if (error)
        throw units::Refusal(
            fmt::format("The folder {} cannot be read. Check that you may read it.", folder.string()));
    std::ranges::sort(files);
    return files;
}

/// Adds the kind of a file to the others. Throws Refusal that names it.
void add_file(std::vector<horns::HornKind>& kinds, std::map<std::string, std::string>& own,
              const fs::path& file) {
    const std::string name = file.string();
    horns::HornKind kind = read_kind_file(file);
    if (horns::find_kind(horns::built_in_kinds(), kind.id) != nullptr)
        throw units::Refusal(
            fmt::format("{}: id \"{}\" is that of a kind that comes with the program. Give your own kind "
                        "an id of its own.",
                        name, kind.id));
    const auto [other, is_new] = own.emplace(kind.id, name);
    if (!is_new)
        throw units::Refusal(fmt::format("{}: id \"{}\" is already that of {}. Give each kind its own.", name,
                                         kind.id, other->second));
    kinds.push_back(std::move(kind));
}

std::vector<horns::HornKind> with_files(const std::vector<fs::path>& files) {
    std::vector<horns::HornKind> kinds = horns::built_in_kinds();
    std::map<std::string, std::string> own;
    for (const fs::path& file : files)
        add_file(kinds, own, file);
    return kinds;
}

}  // namespace

horns::HornKind read_kind_file(const fs::path& file) {
    return horns::read_kind(read_text_file(file), file.string());
}

std::vector<horns::HornKind> kinds_with_own(const fs::path& studio_file) {
    return with_files(kind_files_in(studio_file.parent_path() / "kinds"));
}

ReadableKinds readable_kinds(const fs::path& studio_file) {
    ReadableKinds read{horns::built_in_kinds(), {}};
    std::map<std::string, std::string> own;
    const auto or_problem = [&](const auto& step) {
        try {
            step();
        } catch (const units::Refusal& refusal) {
            read.problems.emplace_back(refusal.what());
        }
    };
    std::vector<fs::path> files;
    or_problem([&] { files = kind_files_in(studio_file.parent_path() / "kinds"); });
    for (const fs::path& file : files)
        or_problem([&] { add_file(read.kinds, own, file); });
    return read;
}

std::vector<horns::HornKind> kinds_with_folder(const fs::path& folder) {
    std::error_code error;
    if (!fs::is_directory(folder, error))
        throw units::Refusal(
            fmt::format("{} is no folder. Name the folder that your kinds' files are in.", folder.string()));
    return with_files(kind_files_in(folder));
}

}  // namespace lowledger::exchange
