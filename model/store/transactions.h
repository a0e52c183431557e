#pragma once

#include <SQLiteCpp/Database.h>
#include <type_traits>
#include <utility>

namespace lowledger::store {

/// Whether a transaction is open on this connection.
bool in_transaction(const SQLite::Database& database);

/// The right to write, from now to `commit`; without that everything since is taken back.
class WriteTransaction {
  public:
    /// Waits for another writer as long as the connection's busy timeout; then throws SQLITE_BUSY.
    explicit WriteTransaction(SQLite::Database& database);
    WriteTransaction(const WriteTransaction&) = delete;
    WriteTransaction& operator=(const WriteTransaction&) = delete;
    ~WriteTransaction();
    /// Throws SQLite::Exception when SQLite has taken the transaction back by itself, as it does after a full
    /// disk.
    void require_open() const;
    void commit();

  private:
    SQLite::Database& database_;
};

/// Several reads see one state of the file. Inside another transaction it does nothing.
class ReadTransaction {
  public:
    explicit ReadTransaction(SQLite::Database& database);
    ReadTransaction(const ReadTransaction&) = delete;
    ReadTransaction& operator=(const ReadTransaction&) = delete;
    ~ReadTransaction();

  private:
    SQLite::Database* database_ = nullptr;
};

/// A part of a write transaction: taken back alone if it is not `keep`t.
class Part {
  public:
    /// Throws SQLite::Exception when no transaction is open.
    explicit Part(SQLite::Database& database);
    Part(const Part&) = delete;
    Part& operator=(const Part&) = delete;
    ~Part();
    void keep();

  private:
    SQLite::Database& database_;
    bool kept_ = false;
};

/// Runs `work` as one part: all of it or, when it throws, nothing.
template <typename Work>
auto in_one_part(SQLite::Database& database, Work&& work) {
    Part part(database);
    if constexpr (std::is_void_v<decltype(std::forward<Work>(work)())>) {
        std::forward<Work>(work)();
        part.keep();
    } else {
        auto result = std::forward<Work>(work)();
        part.keep();
        return result;
    }
}

}  // namespace lowledger::store
