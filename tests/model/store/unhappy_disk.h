#pragma once

#include <functional>

/// A disk that fails at a chosen moment: SQLite's default file access with a say before every write, sync and
/// cut of a file. Everything else goes through as it is.
namespace lowledger::store::unhappy {

enum class Answer { go_on, disk_full, disk_failed };
/// Without shared memory, as on some remote disks, SQLite refuses a WAL.
enum class SharedMemory { there, missing };

/// While it lives every new connection of this process asks `before_write` (with the number of such calls so
/// far, from 1). One at a time; connections must be closed before it goes.
class Disk {
  public:
    explicit Disk(std::function<Answer(int)> before_write, SharedMemory shared_memory = SharedMemory::there);
    Disk(const Disk&) = delete;
    Disk& operator=(const Disk&) = delete;
    ~Disk();

    /// How often it was asked.
    [[nodiscard]] int writes() const;
    /// Counts from the start again and asks this from now on.
    void ask(std::function<Answer(int)> before_write);
};

}  // namespace lowledger::store::unhappy
