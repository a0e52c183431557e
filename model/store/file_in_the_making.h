#pragma once

#include <filesystem>

namespace lowledger::store {

/// A new file that is complete or absent: it is made under another name in the same folder and takes its own
/// when `finish`ed. Never replaces a file.
class FileInTheMaking {
  public:
    /// Throws Refusal where something is at `target` already or its folder cannot be written.
    explicit FileInTheMaking(std::filesystem::path target);
    FileInTheMaking(const FileInTheMaking&) = delete;
    FileInTheMaking& operator=(const FileInTheMaking&) = delete;
    /// Removes what was not finished.
    ~FileInTheMaking();

    /// An empty file to fill; close it before `finish`.
    [[nodiscard]] const std::filesystem::path& temporary() const { return temporary_; }
    /// Brings it to the disk and gives it its name. Throws Refusal.
    void finish();

  private:
    std::filesystem::path target_;
    std::filesystem::path temporary_;
};

}  // namespace lowledger::store
