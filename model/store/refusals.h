#pragma once

#include <SQLiteCpp/Exception.h>
#include <filesystem>
#include <utility>

namespace lowledger::store {

/// What was being done when SQLite failed; the sentence says what became of it.
enum class Task { create, open, read, edit, copy };

/// Throws the refusal that a failure of SQLite means to the user.
[[noreturn]] void refuse(const SQLite::Exception& failure, Task task, const std::filesystem::path& path);

/// Runs `work`; a failure of SQLite goes on as a refusal.
template <typename Work>
auto refusing(Task task, const std::filesystem::path& file, Work&& work) {
    try {
        return std::forward<Work>(work)();
    } catch (const SQLite::Exception& failure) {
        refuse(failure, task, file);
    }
}

}  // namespace lowledger::store
