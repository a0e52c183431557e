#include "tests/model/store/unhappy_disk.h"

#include <sqlite3.h>
#include <stdexcept>

namespace lowledger::store::unhappy {
namespace {

struct State {
    std::function<Answer(int)> before_write;
    int writes = 0;
    SharedMemory shared_memory = SharedMemory::there;
    sqlite3_vfs* real = nullptr;
    sqlite3_vfs vfs{};
};

State& state() {
    static State the_state;
    return the_state;
}

/// What SQLite sees as an open file; the real one lies behind it in the same block of memory.
struct File {
    sqlite3_file base;
    [[nodiscard]] sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

sqlite3_file* real(sqlite3_file* file) {
    return reinterpret_cast<File*>(file)->real();
}

int asked() {
    State& own = state();
    ++own.writes;
    switch (own.before_write(own.writes)) {
        case Answer::disk_full:
            return SQLITE_FULL;
        case Answer::disk_failed:
            return SQLITE_IOERR_WRITE;
        case Answer::go_on:
            break;
    }
    return SQLITE_OK;
}

int close_file(sqlite3_file* f) {
    return real(f)->pMethods == nullptr ? SQLITE_OK : real(f)->pMethods->xClose(real(f));
}
int read(sqlite3_file* f, void* to, int size, sqlite3_int64 at) {
    return real(f)->pMethods->xRead(real(f), to, size, at);
}
int write(sqlite3_file* f, const void* from, int size, sqlite3_int64 at) {
    if (const int failed = asked()) return failed;
    return real(f)->pMethods->xWrite(real(f), from, size, at);
}
int truncate(sqlite3_file* f, sqlite3_int64 size) {
    if (const int failed = asked()) return failed;
    return real(f)->pMethods->xTruncate(real(f), size);
}
int sync(sqlite3_file* f, int flags) {
    if (const int failed = asked()) return failed;
    return real(f)->pMethods->xSync(real(f), flags);
}
int file_size(sqlite3_file* f, sqlite3_int64* size) {
    return real(f)->pMethods->xFileSize(real(f), size);
}
int lock(sqlite3_file* f, int level) {
    return real(f)->pMethods->xLock(real(f), level);
}
int unlock(sqlite3_file* f, int level) {
    return real(f)->pMethods->xUnlock(real(f), level);
}
int check_reserved(sqlite3_file* f, int* out) {
    return real(f)->pMethods->xCheckReservedLock(real(f), out);
}
int file_control(sqlite3_file* f, int what, void* argument) {
    return real(f)->pMethods->xFileControl(real(f), what, argument);
}
int sector_size(sqlite3_file* f) {
    return real(f)->pMethods->xSectorSize(real(f));
}
int characteristics(sqlite3_file* f) {
    return real(f)->pMethods->xDeviceCharacteristics(real(f));
}
int shm_map(sqlite3_file* f, int page, int size, int extend, void volatile** at) {
    return real(f)->pMethods->xShmMap(real(f), page, size, extend, at);
}
int shm_lock(sqlite3_file* f, int offset, int count, int flags) {
    return real(f)->pMethods->xShmLock(real(f), offset, count, flags);
}
void shm_barrier(sqlite3_file* f) {
    real(f)->pMethods->xShmBarrier(real(f));
}
int shm_unmap(sqlite3_file* f, int remove) {
    return real(f)->pMethods->xShmUnmap(real(f), remove);
}

constexpr sqlite3_io_methods methods_of_version(int version) {
    sqlite3_io_methods methods{};
    methods.iVersion = version;
    methods.xClose = close_file;
    methods.xRead = read;
    methods.xWrite = write;
    methods.xTruncate = truncate;
    methods.xSync = sync;
    methods.xFileSize = file_size;
    methods.xLock = lock;
    methods.xUnlock = unlock;
    methods.xCheckReservedLock = check_reserved;
    methods.xFileControl = file_control;
    methods.xSectorSize = sector_size;
    methods.xDeviceCharacteristics = characteristics;
    methods.xShmMap = shm_map;
    methods.xShmLock = shm_lock;
    methods.xShmBarrier = shm_barrier;
    methods.xShmUnmap = shm_unmap;
    return methods;
}

constexpr sqlite3_io_methods without_shared_memory = methods_of_version(1);
/// Version 3 would add memory-mapped reading.
constexpr sqlite3_io_methods with_shared_memory = methods_of_version(2);

int open_file(sqlite3_vfs* /*vfs*/, const char* name, sqlite3_file* f, int flags, int* out_flags) {
    State& own = state();
    const int code = own.real->xOpen(own.real, name, real(f), flags, out_flags);
    // SQLite closes a file whose methods are set, and only that.
    f->pMethods = real(f)->pMethods == nullptr               ? nullptr
                  : own.shared_memory == SharedMemory::there ? &with_shared_memory
                                                             : &without_shared_memory;
    return code;
}

}  // namespace

Disk::Disk(std::function<Answer(int)> before_write, SharedMemory shared_memory) {
    State& own = state();
    if (own.real != nullptr) throw std::logic_error("one unhappy disk at a time");
    ask(std::move(before_write));
    own.shared_memory = shared_memory;
    own.real = sqlite3_vfs_find(nullptr);
    own.vfs = *own.real;
    own.vfs.szOsFile = static_cast<int>(sizeof(File)) + own.real->szOsFile;
    own.vfs.zName = "unhappy disk";
    own.vfs.pNext = nullptr;
    own.vfs.xOpen = open_file;
    sqlite3_vfs_register(&own.vfs, 1);
}

Disk::~Disk() {
    State& own = state();
    sqlite3_vfs_unregister(&own.vfs);
    sqlite3_vfs_register(own.real, 1);
    own.real = nullptr;
    own.before_write = nullptr;
}

int Disk::writes() const {
    return state().writes;
}

void Disk::ask(std::function<Answer(int)> before_write) {
    state().before_write = std::move(before_write);
    state().writes = 0;
}

}  // namespace lowledger::store::unhappy
