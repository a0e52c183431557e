#include "reports/canvas/whole_file.h"

#include <atomic>
#include <cerrno>
#include <fcntl.h>
#include <string>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <utility>

#include "model/units/refusal.h"

namespace lowledger::canvas {
namespace {

namespace fs = std::filesystem;

std::string advice(int error) {
    switch (error) {
        case ENOSPC:
        case EDQUOT:
            return "the disk is full. Free some space or choose another folder.";
        case EFBIG:
            return "it is larger than files may be there. Choose another folder.";
        case ENOENT:
            return "its folder does not exist. Make the folder or choose another.";
        case ENOTDIR:
            return "a part of its path is not a folder. Choose another place.";
        case EACCES:
        case EPERM:
            return "you may not write there. Choose another folder or file name.";
        case EROFS:
            return "the disk is read-only. Choose another folder.";
        case EISDIR:
            return "there is a folder of that name. Choose another name.";
        case ENAMETOOLONG:
            return "its name is too long. Choose a shorter one.";
        default:
            return "the system said: " + std::generic_category().message(error) + ".";
    }
}

[[noreturn]] void refuse(const fs::path& path, int error) {
    throw units::Refusal("The file " + path.string() + " was not written: " + advice(error));
}

/// A file open for writing; closed at the latest when it goes.
class Descriptor {
  public:
    explicit Descriptor(int number) : number_(number) {}
    ~Descriptor() {
        if (number_ >= 0) ::close(number_);
    }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;

    [[nodiscard]] bool is_open() const { return number_ >= 0; }

    /// Each gives 0 or the system's error.
    int write(std::string_view bytes) {
        while (!bytes.empty()) {
            const ssize_t written = ::write(number_, bytes.data(), bytes.size());
            if (written < 0 && errno != EINTR) return errno;
            if (written > 0) bytes.remove_prefix(static_cast<std::size_t>(written));
        }
        return 0;
    }
    int take_mode(mode_t mode) { return ::fchmod(number_, mode) == 0 ? 0 : errno; }
    int flush() { return ::fsync(number_) == 0 ? 0 : errno; }
    int close() { return ::close(std::exchange(number_, -1)) == 0 ? 0 : errno; }

  private:
    int number_;
};

/// The file that becomes the wanted one; taken away again unless it did.
class PartFile {
  public:
    explicit PartFile(fs::path path) : path_(std::move(path)) {}
    ~PartFile() {
        if (!path_.empty()) ::unlink(path_.c_str());
    }
    PartFile(const PartFile&) = delete;
    PartFile& operator=(const PartFile&) = delete;

    int become(const fs::path& wanted) {
        if (::rename(path_.c_str(), wanted.c_str()) != 0) return errno;
        path_.clear();
        return 0;
    }

  private:
    fs::path path_;
};

fs::path part_name(const fs::path& folder) {
    static std::atomic<unsigned> count{0};
    return folder / (".lowledger-" + std::to_string(::getpid()) + "-" + std::to_string(count++) + ".part");
}

/// Where a chain of symbolic links ends.
fs::path followed(const fs::path& path) {
    std::error_code ignored;
    if (!fs::is_symlink(fs::symlink_status(path, ignored))) return path;
    const fs::path target = fs::weakly_canonical(path, ignored);
    return ignored ? path : target;
}

int write_directly(const fs::path& path, std::string_view bytes) {
    Descriptor file(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
    if (!file.is_open()) return errno;
    if (const int error = file.write(bytes)) return error;
    return file.close();
}

/// The rename itself is safe on disk only once its folder is; some file systems cannot flush a folder, and
/// the file is whole all the same.
void flush_folder(const fs::path& folder) {
    Descriptor opened(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (opened.is_open()) opened.flush();
}

int replace(const fs::path& path, std::string_view bytes, const struct stat* old) {
    const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
    fs::path name;
    int number = -1;
    do {
        name = part_name(folder);
        number = ::open(name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    } while (number < 0 && errno == EEXIST);
    if (number < 0) return errno;

    PartFile part(std::move(name));
    Descriptor file(number);
    if (const int error = file.write(bytes)) return error;
    if (old != nullptr)
        if (const int error = file.take_mode(old->st_mode & 07777U)) return error;
    if (const int error = file.flush()) return error;
    if (const int error = file.close()) return error;
    if (const int error = part.become(path)) return error;
    flush_folder(folder);
    return 0;
}

int write_whole(const fs::path& path, std::string_view bytes) {
    struct stat old {};
    if (::stat(path.c_str(), &old) != 0) {
        if (errno != ENOENT) return errno;
        return replace(path, bytes, nullptr);
    }
    if (S_ISDIR(old.st_mode)) return EISDIR;
    // A rename would not ask whether the old file is protected.
    if (::access(path.c_str(), W_OK) != 0) return errno;
    if (!S_ISREG(old.st_mode)) return write_directly(path, bytes);
    return replace(path, bytes, &old);
}

}  // namespace

void write_file_whole(const fs::path& path, std::string_view bytes) {
    if (const int error = write_whole(followed(path), bytes)) refuse(path, error);
}

}  // namespace lowledger::canvas
