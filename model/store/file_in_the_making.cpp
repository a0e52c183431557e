#include "model/store/file_in_the_making.h"

#include <array>
#include <cerrno>
#include <cstdio>
#include <fcntl.h>
#include <fmt/format.h>
#include <random>
#include <system_error>
#include <unistd.h>

#include "model/units/refusal.h"

namespace lowledger::store {
namespace {

namespace fs = std::filesystem;

/// What SQLite keeps beside a database while it is written.
constexpr std::array companions = {"-journal", "-wal", "-shm"};

[[noreturn]] void refuse_taken(const fs::path& target) {
    throw units::Refusal(fmt::format(
        "There is something at {} already: choose another name, or move that away first.", target.string()));
}

[[noreturn]] void refuse_write(const fs::path& target, int error) {
    throw units::Refusal(
        fmt::format("{} could not be made ({}): choose a folder that can be written, or free some "
                    "space.",
                    target.string(), std::generic_category().message(error)));
}

/// A journal left behind would be played into the new file. It may hold the last edits of a studio that was
/// moved away without it, so it is not ours to remove.
void refuse_companions(const fs::path& target) {
    for (const char* companion : companions) {
        const fs::path left = fs::path(target) += companion;
        if (std::error_code error; !fs::exists(fs::symlink_status(left, error))) continue;
        throw units::Refusal(
            fmt::format("{} was left behind by a studio of the name {}, which is gone: choose another name, "
                        "or move that file to where "
                        "its studio is now.",
                        left.string(), target.filename().string()));
    }
}

fs::path folder_of(const fs::path& target) {
    return target.has_parent_path() ? target.parent_path() : fs::path(".");
}

/// Makes an empty file of an unused name beside `target`.
fs::path unused_beside(const fs::path& target) {
    std::random_device random;
    for (;;) {
        fs::path name = target;
        name += fmt::format(".part-{:08x}", random());
        const int file = ::open(name.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0666);
        if (file >= 0) {
            ::close(file);
            return name;
        }
        if (errno != EEXIST) refuse_write(target, errno);
    }
}

/// 0, or errno.
int brought_to_disk(const fs::path& path, int flags) {
    const int file = ::open(path.c_str(), flags | O_CLOEXEC);
    if (file < 0) return errno;
    const int error = ::fsync(file) == 0 ? 0 : errno;
    ::close(file);
    return error;
}

/// Renames without replacing; 0, or errno.
int renamed(const fs::path& from, const fs::path& to) {
    if (::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0) return 0;
    if (errno != EINVAL && errno != ENOSYS) return errno;
    // A file system without that call: a hard link does not replace either.
    if (::link(from.c_str(), to.c_str()) == 0) {
        ::unlink(from.c_str());
        return 0;
    }
    if (errno != EPERM && errno != EOPNOTSUPP && errno != ENOSYS) return errno;
    if (std::error_code ignored; fs::exists(fs::symlink_status(to, ignored))) return EEXIST;
    return ::rename(from.c_str(), to.c_str()) == 0 ? 0 : errno;
}

}  // namespace

FileInTheMaking::FileInTheMaking(fs::path target) : target_(std::move(target)) {
    std::error_code error;
    if (fs::exists(fs::symlink_status(target_, error))) refuse_taken(target_);
    if (!fs::is_directory(folder_of(target_), error)) {
        throw units::Refusal(fmt::format("{} could not be made: there is no folder {}.", target_.string(),
                                         folder_of(target_).string()));
    }
    refuse_companions(target_);
    temporary_ = unused_beside(target_);
}

FileInTheMaking::~FileInTheMaking() {
    if (temporary_.empty()) return;
    std::error_code ignored;
    fs::remove(temporary_, ignored);
    for (const char* companion : companions)
        fs::remove(fs::path(temporary_) += companion, ignored);
}

void FileInTheMaking::finish() {
    if (const int error = brought_to_disk(temporary_, O_RDONLY)) refuse_write(target_, error);
    if (const int error = renamed(temporary_, target_)) {
        if (error == EEXIST) refuse_taken(target_);
        refuse_write(target_, error);
    }
    temporary_.clear();
    // Some file systems cannot sync a folder; the file itself is on the disk by now.
    brought_to_disk(folder_of(target_), O_RDONLY | O_DIRECTORY);
}

}  // namespace lowledger::store
