#include "model/store/connection.h"

#include <algorithm>
#include <array>
#include <fcntl.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <sys/vfs.h>
#include <system_error>
#include <unistd.h>

#include "model/store/file_in_the_making.h"
#include "model/store/records_in.h"
#include "model/store/refusals.h"
#include "model/store/schema.h"
#include "model/store/statement.h"

namespace lowledger::store {
namespace {

namespace fs = std::filesystem;

constexpr int patience_ms = 2000;

fs::path folder_of(const fs::path& path) {
    return path.has_parent_path() ? path.parent_path() : fs::path(".");
}

bool writable(const fs::path& path) {
    return ::faccessat(AT_FDCWD, path.c_str(), W_OK, AT_EACCESS) == 0;
}

bool on_remote_file_system(const fs::path& path) {
    struct statfs about {};
    return ::statfs(path.c_str(), &about) == 0 && remote_file_system(static_cast<long>(about.f_type));
}

/// What can be told without opening: an open and close of the file here would drop the locks that another
/// connection of this process holds.
void check_it_is_a_file(const fs::path& path) {
    const std::string name = path.string();
    std::error_code error;
    const fs::file_status status = fs::status(path, error);
    if (status.type() == fs::file_type::not_found) {
        throw StudioMissing(
            fmt::format("There is no studio at {}: check the name and the folder, or whether its "
                        "disk is connected.",
                        name));
    }
    if (fs::is_directory(status)) {
        throw NotAStudio(fmt::format("{} is a folder: choose the studio's file in it.", name));
    }
    if (error || !fs::is_regular_file(status)) {
        throw units::Refusal(fmt::format("{} could not be opened: check that you may use the file.", name));
    }
    if (fs::file_size(path, error) == 0 && !error) {
        throw NotAStudio(
            fmt::format("{} is empty, so there is no studio in it: go back to a copy, or make a new "
                        "studio under another name.",
                        name));
    }
    if (::faccessat(AT_FDCWD, path.c_str(), R_OK, AT_EACCESS) != 0) {
        throw units::Refusal(fmt::format("{} could not be opened: you have no right to read it.", name));
    }
}

/// Whether the file and, for its journal, the folder can be written. Throws where it is no file at all.
bool may_be_written(const fs::path& path) {
    check_it_is_a_file(path);
    return writable(path) && writable(folder_of(path));
}

void check_it_can_be_written(const fs::path& path, bool may_write) {
    if (may_write) return;
    throw StudioReadOnly(
        fmt::format("{} cannot be written: open it for reading only, or copy it to a folder of "
                    "yours.",
                    path.string()));
}

/// As an SQLite URI that promises that nobody changes the file.
std::string immutable_uri(const fs::path& path) {
    std::string uri = "file:";
    for (const char c : fs::absolute(path).string()) {
        if (c == '?' || c == '#' || c == '%') {
            uri += fmt::format("%{:02x}", static_cast<unsigned char>(c));
        } else {
            uri += c;
        }
    }
    return uri + "?immutable=1";
}

/// Whether a WAL with something in it lies beside the file.
bool has_unfinished_changes(const fs::path& path) {
    std::error_code error;
    const auto size = fs::file_size(fs::path(path) += "-wal", error);
    return !error && size > 0;
}

SQLite::Database opened(const fs::path& path, bool may_write) {
    if (may_write) return SQLite::Database(path.string(), SQLite::OPEN_READWRITE, patience_ms);
    SQLite::Database database(path.string(), SQLite::OPEN_READONLY, patience_ms);
    try {
        schema_version(database);
    } catch (const SQLite::Exception& failure) {
        if (failure.getErrorCode() != SQLITE_CANTOPEN && failure.getErrorCode() != SQLITE_READONLY) throw;
        // Not put to rest, and its companions cannot be made here. Without changes outside the main file that
        // file can be read as it is.
        if (has_unfinished_changes(path) || fs::exists(fs::path(path) += "-journal")) {
            throw StudioReadOnly(
                fmt::format("{} was left in the middle of a change and cannot be written here: "
                            "copy it with the files beside it to a folder of yours and open it "
                            "there.",
                            path.string()));
        }
        return SQLite::Database(immutable_uri(path), SQLite::OPEN_READONLY | SQLite::OPEN_URI, patience_ms);
    }
    return database;
}

}  // namespace

bool remote_file_system(long type) {
    // From statfs(2) and linux/magic.h: NFS, SMB, SMB2, CIFS, 9P, Coda, AFS, Ceph, and FUSE, which sshfs
    // uses.
    constexpr std::array<long, 9> remote = {0x6969,     0x517B,     0xFE534D42, 0xFF534D42, 0x01021997,
                                            0x73757245, 0x5346414F, 0x00C36400, 0x65735546};
    return std::ranges::find(remote, type) != remote.end();
}

Connection::Connection(const fs::path& path, Access access)
    : path_(path),
      access_(access),
      may_write_(may_be_written(path)),
      database_(refusing(Task::open, path, [&] {
          if (access == Access::read_write) check_it_can_be_written(path, may_write_);
          return opened(path, may_write_);
      })) {
    refusing(Task::open, path_, [&] {
        check_it_is_a_studio();
        check_nothing_is_cut_off();
        bring_up_to_date();
        prepare();
    });
}

void Connection::check_it_is_a_studio() {
    if (access_ == Access::read_write) {
        check_it_can_be_written(path_, sqlite3_db_readonly(database_.getHandle(), "main") == 0);
    }
    Statement mark(database_, "PRAGMA application_id");
    mark.step();
    if (mark.integer(0) != application_id) {
        throw NotAStudio(fmt::format(
            "{} is a database of another program, not a studio: choose another file.", path_.string()));
    }
}

void Connection::check_nothing_is_cut_off() {
    // SQLite itself misses a cut within the last page. While there is a WAL the main file may be behind.
    Statement journal(database_, "PRAGMA journal_mode");
    journal.step();
    if (journal.text(0) != "delete") return;
    Statement size(database_, "SELECT page_count * page_size FROM pragma_page_count, pragma_page_size");
    size.step();
    std::error_code error;
    const auto there = fs::file_size(path_, error);
    if (error || there >= static_cast<std::uintmax_t>(size.integer(0))) return;
    throw StudioDamaged(
        fmt::format("The studio {} is cut off at its end, as after a copy that broke off: leave the "
                    "file as it is and go back to a copy.",
                    path_.string()));
}

void Connection::bring_up_to_date() {
    const std::vector<Migration> migrations = built_in_migrations();
    const int version = schema_version(database_);
    const int newest = migrations.back().version;
    if (version > newest) {
        throw StudioNewer(
            fmt::format("{} was written by a newer version of this program (file version {}, this "
                        "program knows up to {}): install the newer program. Nothing was changed.",
                        path_.string(), version, newest));
    }
    if (version == newest) return;
    if (access_ == Access::read_only) {
        throw StudioReadOnly(
            fmt::format("{} was written by an older version of this program and must be brought "
                        "up to date first: open it once for writing.",
                        path_.string()));
    }
    keep_the_old_version(version);
    migrate(database_, migrations);
}

void Connection::keep_the_old_version(int version) {
    if (version == 0) return;
    const fs::path stem = path_.parent_path() / path_.stem();
    fs::path kept;
    for (int copy = 1; kept.empty() || fs::exists(kept); ++copy) {
        kept = stem;
        kept += copy == 1 ? fmt::format(" (version {})", version)
                          : fmt::format(" (version {}, {})", version, copy);
        kept += path_.extension();
    }
    FileInTheMaking old(kept);
    Statement(database_, "VACUUM INTO ?1").with(fs::absolute(old.temporary()).string()).run();
    old.finish();
}

void Connection::prepare() {
    database_.exec("PRAGMA foreign_keys = ON");
    database_.exec("PRAGMA trusted_schema = OFF");
    // What is removed is gone from the file, too.
    database_.exec("PRAGMA secure_delete = ON");
    // A commit that was told is on the disk.
    database_.exec("PRAGMA synchronous = FULL");
    // Damage shows where it is read instead of as odd values.
    database_.exec("PRAGMA cell_size_check = ON");
    if (access_ == Access::read_only) {
        database_.exec("PRAGMA query_only = ON");
        return;
    }
    // Refused or busy: the journal stays as it is, which is slower with several readers and as safe.
    database_.tryExec(on_remote_file_system(path_) ? "PRAGMA journal_mode = DELETE"
                                                   : "PRAGMA journal_mode = WAL");
}

Connection::~Connection() {
    if (!may_write_) return;
    // Fails while others have the file open: the last of them does it.
    database_.setBusyTimeout(0);
    database_.tryExec("PRAGMA query_only = OFF");
    database_.tryExec("PRAGMA journal_mode = DELETE");
}

void make_empty_studio(const fs::path& path, const studio::StudioFacts& facts) {
    SQLite::Database database(path.string(), SQLite::OPEN_READWRITE, patience_ms);
    migrate(database, built_in_migrations());
    write_first(database, facts);
}

}  // namespace lowledger::store
