#pragma once

#include <set>
#include <string>
#include <string_view>

namespace lowledger::pages {

/// A title as the name of a file that every usual file system takes: letters of all scripts stay; separators,
/// characters that are not allowed somewhere, and control characters become "-"; no dot or blank at the ends;
/// at most 120 bytes, cut between characters.
std::string safe_file_name(std::string_view title);

/// Safe names, each given once: a second one of the same name gets " (2)". Case of A to Z does not tell names
/// apart, as some file systems have it.
class FileNames {
  public:
    std::string next(std::string_view title);

  private:
    std::set<std::string> given_;
};

}  // namespace lowledger::pages
