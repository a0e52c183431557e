#pragma once

#include <SQLiteCpp/Database.h>
#include <memory>
#include <span>
#include <string>
#include <vector>

struct sqlite3_session;

namespace lowledger::store {

/// The net difference that an edit made to the record tables, row by row with old and new values (a changeset
/// of SQLite's session extension).
class Changeset {
  public:
    Changeset() = default;
    explicit Changeset(std::vector<unsigned char> bytes) : bytes_(std::move(bytes)) {}

    [[nodiscard]] bool empty() const { return bytes_.empty(); }
    /// What takes it back.
    [[nodiscard]] Changeset inverse() const;
    /// Names of the tables it touches, each once, by name.
    [[nodiscard]] std::vector<std::string> tables() const;
    /// Makes the changes inside the open transaction. False, and nothing made, where a row is not as it was
    /// or a rule would break: someone else changed it.
    [[nodiscard]] bool apply(SQLite::Database& database) const;

  private:
    std::vector<unsigned char> bytes_;
};

/// Follows the tables from its making on.
class Recorder {
  public:
    Recorder(SQLite::Database& database, std::span<const char* const> tables);
    /// What has changed so far.
    [[nodiscard]] Changeset changes() const;

  private:
    SQLite::Database& database_;
    std::unique_ptr<sqlite3_session, void (*)(sqlite3_session*)> session_;
};

}  // namespace lowledger::store
