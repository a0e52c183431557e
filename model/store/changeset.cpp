// These two make sqlite3.h declare the session extension.
#define SQLITE_ENABLE_SESSION
#define SQLITE_ENABLE_PREUPDATE_HOOK
#include "model/store/changeset.h"

#include <SQLiteCpp/Exception.h>
#include <set>
#include <sqlite3.h>

namespace lowledger::store {
namespace {

void require(int code, SQLite::Database& database) {
    if (code != SQLITE_OK) throw SQLite::Exception(database.getHandle(), code);
}

void require(int code) {
    if (code != SQLITE_OK) throw SQLite::Exception(sqlite3_errstr(code), code);
}

/// Bytes that SQLite allocated, as ours.
std::vector<unsigned char> taken(void* bytes, int size) {
    const std::unique_ptr<void, void (*)(void*)> owner(bytes, sqlite3_free);
    const auto* first = static_cast<const unsigned char*>(bytes);
    return size == 0 ? std::vector<unsigned char>{} : std::vector<unsigned char>(first, first + size);
}

/// SQLite takes the bytes of a changeset by a pointer to non-const and does not write them.
void* bytes_of(const std::vector<unsigned char>& bytes) {
    return const_cast<unsigned char*>(bytes.data());
}

int size_of(const std::vector<unsigned char>& bytes) {
    return static_cast<int>(bytes.size());
}

extern "C" int stop_at_any_conflict(void* /*context*/, int /*conflict*/, sqlite3_changeset_iter* /*row*/) {
    return SQLITE_CHANGESET_ABORT;
}

}  // namespace

Changeset Changeset::inverse() const {
    int size = 0;
    void* bytes = nullptr;
    require(sqlite3changeset_invert(size_of(bytes_), bytes_of(bytes_), &size, &bytes));
    return Changeset(taken(bytes, size));
}

std::vector<std::string> Changeset::tables() const {
    sqlite3_changeset_iter* start = nullptr;
    require(sqlite3changeset_start(&start, size_of(bytes_), bytes_of(bytes_)));
    const std::unique_ptr<sqlite3_changeset_iter, int (*)(sqlite3_changeset_iter*)> row(
        start, sqlite3changeset_finalize);
    std::set<std::string> names;
    while (sqlite3changeset_next(row.get()) == SQLITE_ROW) {
        const char* table = nullptr;
        int columns = 0;
        int operation = 0;
        int indirect = 0;
        require(sqlite3changeset_op(row.get(), &table, &columns, &operation, &indirect));
        names.insert(table);
    }
    return {names.begin(), names.end()};
}

bool Changeset::apply(SQLite::Database& database) const {
    const int code = sqlite3changeset_apply(database.getHandle(), size_of(bytes_), bytes_of(bytes_), nullptr,
                                            stop_at_any_conflict, nullptr);
    // The second is for references that would be left without their record, found after the last row.
    if (code == SQLITE_ABORT || code == SQLITE_CONSTRAINT) return false;
    require(code, database);
    return true;
}

Recorder::Recorder(SQLite::Database& database, std::span<const char* const> tables)
    : database_(database), session_(nullptr, sqlite3session_delete) {
    sqlite3_session* session = nullptr;
    require(sqlite3session_create(database_.getHandle(), "main", &session), database_);
    session_.reset(session);
    for (const char* table : tables)
        require(sqlite3session_attach(session, table), database_);
}

Changeset Recorder::changes() const {
    int size = 0;
    void* bytes = nullptr;
    require(sqlite3session_changeset(session_.get(), &size, &bytes), database_);
    return Changeset(taken(bytes, size));
}

}  // namespace lowledger::store
