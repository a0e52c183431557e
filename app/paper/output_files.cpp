#include "app/paper/output_files.h"

#include <algorithm>
#include <fmt/format.h>
#include <system_error>

#include "model/units/refusal.h"
#include "reports/canvas/whole_file.h"

namespace lowledger::paper {

namespace {

namespace fs = std::filesystem;

fs::path folder_of(const fs::path& path) {
    const fs::path parent = path.parent_path();
    return parent.empty() ? fs::path(".") : parent;
}

/// Removes what it was told of unless all is well.
class NewFiles {
  public:
    NewFiles() = default;
    ~NewFiles() {
        std::error_code ignored;
        std::for_each(made_.rbegin(), made_.rend(), [&](const fs::path& path) { fs::remove(path, ignored); });
    }
    NewFiles(const NewFiles&) = delete;
    NewFiles& operator=(const NewFiles&) = delete;
    void add(const fs::path& path) { made_.push_back(path); }
    void keep() { made_.clear(); }

  private:
    std::vector<fs::path> made_;
};

void make_folder(const fs::path& folder, NewFiles& made) {
    std::error_code error;
    if (fs::exists(folder, error)) return;
    if (!fs::create_directory(folder, error) || error)
        throw units::Refusal(fmt::format("The folder {} cannot be made: {}. Choose another one.",
                                         folder.string(), error.message()));
    made.add(folder);
}

}  // namespace

void require_place(const fs::path& place, bool is_file) {
    std::error_code ignored;
    const fs::path plain = place.has_filename() ? place : place.parent_path();
    const fs::path above = folder_of(plain);
    if (!fs::is_directory(above, ignored))
        throw units::Refusal(fmt::format(
            "There is no folder {} to write into. Make it first, or choose another.", above.string()));
    if (is_file && fs::is_directory(place, ignored))
        throw units::Refusal(fmt::format("{} is a folder. Give the file another name.", place.string()));
    if (!is_file && fs::exists(plain, ignored) && !fs::is_directory(plain, ignored))
        throw units::Refusal(
            fmt::format("{} is a file. Name a folder, or a file that ends in .pdf.", plain.string()));
}

void write_all(const std::vector<OutputFile>& files) {
    NewFiles made;
    for (const OutputFile& file : files) {
        make_folder(folder_of(file.path), made);
        std::error_code ignored;
        const bool is_new = !fs::exists(file.path, ignored);
        canvas::write_file_whole(file.path, file.bytes);
        if (is_new) made.add(file.path);
    }
    made.keep();
}

}  // namespace lowledger::paper
