#include "model/store/transactions.h"

#include <SQLiteCpp/Exception.h>
#include <sqlite3.h>

namespace lowledger::store {
namespace {

void require_transaction(const SQLite::Database& database) {
    if (!in_transaction(database))
        throw SQLite::Exception("the change was taken back after a failure", SQLITE_ABORT);
}

}  // namespace

bool in_transaction(const SQLite::Database& database) {
    return sqlite3_get_autocommit(database.getHandle()) == 0;
}

WriteTransaction::WriteTransaction(SQLite::Database& database) : database_(database) {
    database_.exec("BEGIN IMMEDIATE");
}

WriteTransaction::~WriteTransaction() {
    // After a full disk SQLite may have rolled back by itself.
    if (in_transaction(database_)) database_.tryExec("ROLLBACK");
}

void WriteTransaction::require_open() const {
    require_transaction(database_);
}

void WriteTransaction::commit() {
    require_open();
    database_.exec("COMMIT");
}

ReadTransaction::ReadTransaction(SQLite::Database& database) {
    if (in_transaction(database)) return;
    database.exec("BEGIN");
    database_ = &database;
}

ReadTransaction::~ReadTransaction() {
    if (database_ != nullptr && in_transaction(*database_)) database_->tryExec("ROLLBACK");
}

Part::Part(SQLite::Database& database) : database_(database) {
    require_transaction(database_);
    database_.exec("SAVEPOINT part");
}

Part::~Part() {
    if (kept_ || !in_transaction(database_)) return;
    database_.tryExec("ROLLBACK TO part");
    database_.tryExec("RELEASE part");
}

void Part::keep() {
    database_.exec("RELEASE part");
    kept_ = true;
}

}  // namespace lowledger::store
