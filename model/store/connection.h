#pragma once

#include <SQLiteCpp/Database.h>
#include <filesystem>

#include "model/store/studio_file.h"

namespace lowledger::store {

/// Whether locks cannot be relied on there, by the type of its file system (statfs(2)): other machines'
/// disks.
bool remote_file_system(long type);

/// A connection to a studio whose header, version and rights are in order. While it is open for writing the
/// journal is a WAL where that can be; the last to close puts it back, so that the file at rest is one file.
class Connection {
  public:
    /// Throws the refusals of `StudioFile::open`.
    Connection(const std::filesystem::path& path, Access access);
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;
    ~Connection();

    [[nodiscard]] SQLite::Database& database() { return database_; }

  private:
    void check_it_is_a_studio();
    void check_nothing_is_cut_off();
    void bring_up_to_date();
    /// A whole copy beside the file, "NAME (version 1).lowledger", before its schema changes.
    void keep_the_old_version(int version);
    void prepare();

    std::filesystem::path path_;
    Access access_;
    bool may_write_;
    SQLite::Database database_;
};

/// Fills an empty file with the schema of the newest version, without records.
void make_empty_studio(const std::filesystem::path& path, const studio::StudioFacts& facts);

}  // namespace lowledger::store
