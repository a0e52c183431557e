#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace lowledger::paper {

struct OutputFile {
    std::filesystem::path path;
    std::string bytes;
};

/// Throws Refusal, before any work is done, where `place` cannot hold what is to be written: the folder that
/// a file is to be in is missing, a folder is meant and a file is there, a file is meant and a folder is
/// there. A folder that is missing itself is made later if the one above it is there.
void require_place(const std::filesystem::path& place, bool is_file);

/// Writes all files or none: each whole; when one fails those that were not there before are removed again,
/// and a folder that was made for them too. Throws Refusal that names the file.
void write_all(const std::vector<OutputFile>& files);

}  // namespace lowledger::paper
