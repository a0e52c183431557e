#pragma once

#include <filesystem>
#include <string_view>

namespace lowledger::canvas {

/// Writes bytes to `path` whole or not at all: a new file beside it, flushed to disk, then renamed over it
/// (over its target, if `path` is a symbolic link). Throws Refusal that names the file and what to do (folder
/// missing, not writable, disk full); what was at `path` before is then untouched. A device or pipe is
/// written directly.
void write_file_whole(const std::filesystem::path& path, std::string_view bytes);

}  // namespace lowledger::canvas
