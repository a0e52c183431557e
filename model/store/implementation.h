#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "model/store/changeset.h"
#include "model/store/connection.h"
#include "model/store/refusals.h"
#include "model/store/studio_file.h"
#include "model/store/transactions.h"

namespace lowledger::store {

/// An edit that can be undone or, once undone, redone.
struct Step {
    std::string name;
    Changeset changes;
};

struct StudioFile::Implementation {
    Implementation(std::filesystem::path file, Access asked);

    [[nodiscard]] SQLite::Database& database() { return connection.database(); }

    /// Several reads of one state; a failure becomes a refusal.
    template <typename Read>
    auto read(Read read_from) {
        return refusing(Task::read, path, [&] {
            const ReadTransaction transaction(database());
            return read_from(database());
        });
    }

    /// One call of an edit: all of it or nothing; a failure becomes a refusal.
    template <typename Write>
    auto part(Write write_to) {
        return refusing(Task::edit, path,
                        [&] { return in_one_part(database(), [&] { return write_to(database()); }); });
    }

    void require_writing_is_allowed() const;
    /// Inside a transaction: the file is still of the version that this program writes.
    void require_known_version();
    /// Whether another connection has changed the file since the last look; raises the revision then.
    void look_elsewhere();
    /// Tells the listener of a change here, and before it of changes elsewhere that it does not know of.
    void tell(std::string_view name, const Changeset& changes);
    /// Applies the newest step of `from` and moves it to `to`, inverted.
    void take_step(std::vector<Step>& from, std::vector<Step>& to);

    std::filesystem::path path;
    Access access;
    Connection connection;
    std::int64_t revision = 0;
    /// What SQLite's data_version said at the last look.
    std::int64_t data_version = 0;
    bool changed_elsewhere = false;
    bool editing = false;
    /// `changes` of a step in `done` takes it back; of one in `undone` makes it again.
    std::vector<Step> done;
    std::vector<Step> undone;
    std::function<void(const Change&)> listener;
};

}  // namespace lowledger::store
