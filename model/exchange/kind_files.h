#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "model/horns/kind.h"

namespace lowledger::exchange {

/// The built-in kinds and, after them, a teacher's own: every `*.toml` of the folder `kinds` beside the
/// studio file, in the order of their names. Without such a folder the built-in ones alone. Throws Refusal
/// that names the file (and line and key, as horns::read_kind does): one that cannot be read, is no kind, or
/// has the id of a built-in kind or of another file there. No kind is replaced by another.
std::vector<horns::HornKind> kinds_with_own(const std::filesystem::path& studio_file);

/// What could be read, and a sentence for each file that could not.
struct ReadableKinds {
    std::vector<horns::HornKind> kinds;
    std::vector<std::string> problems;
};
/// The same without refusing: a file that `kinds_with_own` would refuse is left out, and all others are
/// there.
ReadableKinds readable_kinds(const std::filesystem::path& studio_file);

/// As `kinds_with_own`, with a teacher's folder itself, which has to be there.
std::vector<horns::HornKind> kinds_with_folder(const std::filesystem::path& folder);

/// The kind of one file. Throws Refusal as horns::read_kind does, or because the file cannot be read.
horns::HornKind read_kind_file(const std::filesystem::path& file);

}  // namespace lowledger::exchange
