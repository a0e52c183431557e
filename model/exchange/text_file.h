#pragma once

#include <filesystem>
#include <string>

namespace lowledger::exchange {

/// A whole file of text, at most 4 MB. Throws Refusal that names the file: missing, a folder, not readable,
/// too large for a file of text.
std::string read_text_file(const std::filesystem::path& path);

}  // namespace lowledger::exchange
