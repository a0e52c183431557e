#include <fmt/format.h>
#include <stdexcept>

#include "model/store/book_in.h"
#include "model/store/implementation.h"
#include "model/store/records_in.h"
#include "model/store/schema.h"
#include "model/store/search.h"
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
        follow_in_search(database());
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
        follow_in_search(own.database());
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

template <Filed Record>
studio::Id<Record> Edit::add(const Record& record) {
    return implementation_.part([&](auto& database) { return insert(database, record); });
}

template <Kept Record>
void Edit::update(const Record& record) {
    implementation_.part([&](auto& database) { replace(database, record); });
}

template <Filed Record>
void Edit::remove(studio::Id<Record> id) {
    implementation_.part([&](auto& database) { store::remove(database, id); });
}

template studio::Id<studio::Student> Edit::add(const studio::Student&);
template void Edit::update(const studio::Student&);
template void Edit::remove(studio::Id<studio::Student>);
template studio::Id<studio::Horn> Edit::add(const studio::Horn&);
template void Edit::update(const studio::Horn&);
template void Edit::remove(studio::Id<studio::Horn>);
template studio::Id<studio::HornUse> Edit::add(const studio::HornUse&);
template void Edit::update(const studio::HornUse&);
template void Edit::remove(studio::Id<studio::HornUse>);
template studio::Id<studio::TuningSheet> Edit::add(const studio::TuningSheet&);
template void Edit::update(const studio::TuningSheet&);
template void Edit::remove(studio::Id<studio::TuningSheet>);
template studio::Id<studio::GivenSettings> Edit::add(const studio::GivenSettings&);
template void Edit::update(const studio::GivenSettings&);
template void Edit::remove(studio::Id<studio::GivenSettings>);
template studio::Id<studio::StudentEvent> Edit::add(const studio::StudentEvent&);
template void Edit::update(const studio::StudentEvent&);
template void Edit::remove(studio::Id<studio::StudentEvent>);
template studio::Id<studio::Piece> Edit::add(const studio::Piece&);
template void Edit::update(const studio::Piece&);
template void Edit::remove(studio::Id<studio::Piece>);
template studio::Id<studio::Mouthpiece> Edit::add(const studio::Mouthpiece&);
template void Edit::update(const studio::Mouthpiece&);
template void Edit::remove(studio::Id<studio::Mouthpiece>);
template studio::Id<studio::Upkeep> Edit::add(const studio::Upkeep&);
template void Edit::update(const studio::Upkeep&);
template void Edit::remove(studio::Id<studio::Upkeep>);
template studio::Id<studio::Loan> Edit::add(const studio::Loan&);
template void Edit::update(const studio::Loan&);
template void Edit::remove(studio::Id<studio::Loan>);
template studio::Id<studio::Term> Edit::add(const studio::Term&);
template void Edit::update(const studio::Term&);
template void Edit::remove(studio::Id<studio::Term>);
template studio::Id<studio::Group> Edit::add(const studio::Group&);
template void Edit::update(const studio::Group&);
template void Edit::remove(studio::Id<studio::Group>);
template studio::Id<studio::TimetableSlot> Edit::add(const studio::TimetableSlot&);
template void Edit::update(const studio::TimetableSlot&);
template void Edit::remove(studio::Id<studio::TimetableSlot>);
template studio::Id<studio::Lesson> Edit::add(const studio::Lesson&);
template void Edit::update(const studio::Lesson&);
template void Edit::remove(studio::Id<studio::Lesson>);
template studio::Id<studio::Routine> Edit::add(const studio::Routine&);
template void Edit::update(const studio::Routine&);
template void Edit::remove(studio::Id<studio::Routine>);
template studio::Id<studio::Assignment> Edit::add(const studio::Assignment&);
template void Edit::update(const studio::Assignment&);
template void Edit::remove(studio::Id<studio::Assignment>);
template studio::Id<studio::PracticeEntry> Edit::add(const studio::PracticeEntry&);
template void Edit::update(const studio::PracticeEntry&);
template void Edit::remove(studio::Id<studio::PracticeEntry>);
template studio::Id<studio::SlidePosition> Edit::add(const studio::SlidePosition&);
template void Edit::remove(studio::Id<studio::SlidePosition>);

}  // namespace lowledger::store
