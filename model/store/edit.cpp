#include <fmt/format.h>
#include <stdexcept>

#include "model/store/implementation.h"
#include "model/store/records_in.h"
#include "model/store/schema.h"
#include "model/store/statement.h"

namespace lowledger::store {
namespace {

/// Sets a flag while it lives.
class Raised {
  public:
    explicit Raised(bool& flag) : flag_(flag) { flag_ = true; }
    Raised(const Raised&) = delete;
    Raised& operator=(const Raised&) = delete;
    ~Raised() { flag_ = false; }

  private:
    bool& flag_;
};

std::int64_t data_version_of(SQLite::Database& database) {
    Statement version(database, "PRAGMA data_version");
    version.step();
    return version.integer(0);
}

}  // namespace

StudioFile::Implementation::Implementation(std::filesystem::path file, Access asked)
    : path(std::move(file)), access(asked), connection(path, access) {
    data_version = refusing(Task::open, path, [&] { return data_version_of(database()); });
}

void StudioFile::Implementation::require_writing_is_allowed() const {
    if (editing) throw std::logic_error("an edit, undo or redo inside an edit");
    if (access == Access::read_write) return;
    throw StudioReadOnly(
        fmt::format("{} is open for reading only: nothing was changed. Open it for writing to "
                    "make changes.",
                    path.string()));
}

void StudioFile::Implementation::require_known_version() {
    const int version = schema_version(database());
    const int known = built_in_migrations().back().version;
    if (version == known) return;
    throw StudioNewer(
        fmt::format("A newer version of this program has changed {} meanwhile (file version {}, this "
                    "program knows {}): nothing was changed here. Close it and open it with the newer "
                    "program.",
                    path.string(), version, known));
}

void StudioFile::Implementation::look_elsewhere() {
    const std::int64_t now = data_version_of(database());
    if (now == data_version) return;
    data_version = now;
    changed_elsewhere = true;
    ++revision;
}

void StudioFile::Implementation::tell(std::string_view name, const Changeset& changes) {
    if (changed_elsewhere) {
        changed_elsewhere = false;
        if (listener) listener({revision, {}, {record_tables.begin(), record_tables.end()}});
    }
    if (changes.empty()) return;
    ++revision;
    if (listener) listener({revision, std::string(name), changes.tables()});
}

void StudioFile::Implementation::take_step(std::vector<Step>& from, std::vector<Step>& to) {
    require_writing_is_allowed();
    if (from.empty()) return;
    const Step step = from.back();
    refusing(Task::edit, path, [&] {
        WriteTransaction transaction(database());
        look_elsewhere();
        require_known_version();
        Step back{step.name, step.changes.inverse()};
        to.reserve(to.size() + 1);
        if (!step.changes.apply(database())) {
            throw StudioChangedElsewhere(
                fmt::format("\"{}\" in {} was left as it is, since another program has "
                            "changed the same records meanwhile. Look at them and change "
                            "them by hand.",
                            step.name, path.string()));
        }
        transaction.commit();
        to.push_back(std::move(back));
        from.pop_back();
    });
    tell(step.name, step.changes);
}

void StudioFile::edit(std::string_view name, const std::function<void(Edit&)>& change) {
    Implementation& own = *implementation_;
    own.require_writing_is_allowed();
    const Changeset made = refusing(Task::edit, own.path, [&] {
        WriteTransaction transaction(own.database());
        own.look_elsewhere();
        own.require_known_version();
        const Recorder recorder(own.database(), record_tables);
        {
            const Raised editing(own.editing);
            Edit edit(own);
            change(edit);
        }
        transaction.require_open();
        Changeset changes = recorder.changes();
        if (changes.empty()) return changes;
        Step step{std::string(name), changes.inverse()};
        own.done.reserve(own.done.size() + 1);
        transaction.commit();
        own.done.push_back(std::move(step));
        own.undone.clear();
        return changes;
    });
    own.tell(name, made);
}

std::optional<std::string> StudioFile::undo_name() const {
    if (implementation_->done.empty()) return std::nullopt;
    return implementation_->done.back().name;
}

std::optional<std::string> StudioFile::redo_name() const {
    if (implementation_->undone.empty()) return std::nullopt;
    return implementation_->undone.back().name;
}

void StudioFile::undo() {
    implementation_->take_step(implementation_->done, implementation_->undone);
}

void StudioFile::redo() {
    implementation_->take_step(implementation_->undone, implementation_->done);
}

void StudioFile::on_change(std::function<void(const Change&)> listener) {
    implementation_->listener = std::move(listener);
}

bool StudioFile::notice_changes_elsewhere() {
    Implementation& own = *implementation_;
    refusing(Task::read, own.path, [&] { own.look_elsewhere(); });
    const bool changed = own.changed_elsewhere;
    own.tell({}, {});
    return changed;
}

void StudioFile::wait_for_others_at_most(std::chrono::milliseconds time) {
    implementation_->database().setBusyTimeout(static_cast<int>(time.count()));
}

void Edit::update(const studio::StudioFacts& facts) {
    implementation_.part([&](auto& database) { replace(database, facts); });
}

void Edit::put(const studio::OwnText& text) {
    implementation_.part([&](auto& database) { store::put(database, text); });
}

void Edit::remove_own_text(std::string_view sentence) {
    implementation_.part([&](auto& database) { store::remove_own_text(database, sentence); });
}

void Edit::put(const studio::HeadPicture& picture) {
    implementation_.part([&](auto& database) { store::put(database, picture); });
}

void Edit::remove_head_picture() {
    implementation_.part([&](auto& database) { store::remove_head_picture(database); });
}

studio::StudentId Edit::add(const studio::Student& student) {
    return implementation_.part([&](auto& database) { return insert(database, student); });
}

void Edit::update(const studio::Student& student) {
    implementation_.part([&](auto& database) { replace(database, student); });
}

void Edit::remove(studio::StudentId id) {
    implementation_.part([&](auto& database) { store::remove(database, id); });
}

studio::HornId Edit::add(const studio::Horn& horn) {
    return implementation_.part([&](auto& database) { return insert(database, horn); });
}

void Edit::update(const studio::Horn& horn) {
    implementation_.part([&](auto& database) { replace(database, horn); });
}

void Edit::remove(studio::HornId id) {
    implementation_.part([&](auto& database) { store::remove(database, id); });
}

studio::SlidePositionId Edit::add(const studio::SlidePosition& position) {
    return implementation_.part([&](auto& database) { return insert(database, position); });
}

void Edit::remove(studio::SlidePositionId id) {
    implementation_.part([&](auto& database) { store::remove(database, id); });
}

studio::HornUseId Edit::add(const studio::HornUse& use) {
    return implementation_.part([&](auto& database) { return insert(database, use); });
}

void Edit::update(const studio::HornUse& use) {
    implementation_.part([&](auto& database) { replace(database, use); });
}

void Edit::remove(studio::HornUseId id) {
    implementation_.part([&](auto& database) { store::remove(database, id); });
}

studio::TuningSheetId Edit::add(const studio::TuningSheet& sheet) {
    return implementation_.part([&](auto& database) { return insert(database, sheet); });
}

void Edit::update(const studio::TuningSheet& sheet) {
    implementation_.part([&](auto& database) { replace(database, sheet); });
}

void Edit::remove(studio::TuningSheetId id) {
    implementation_.part([&](auto& database) { store::remove(database, id); });
}

studio::GivenSettingsId Edit::add(const studio::GivenSettings& settings) {
    return implementation_.part([&](auto& database) { return insert(database, settings); });
}

void Edit::update(const studio::GivenSettings& settings) {
    implementation_.part([&](auto& database) { replace(database, settings); });
}

void Edit::remove(studio::GivenSettingsId id) {
    implementation_.part([&](auto& database) { store::remove(database, id); });
}

}  // namespace lowledger::store
