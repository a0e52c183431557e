#include "model/store/studio_file.h"

#include "model/store/file_in_the_making.h"
#include "model/store/implementation.h"
#include "model/store/records_out.h"
#include "model/store/schema.h"
#include "model/store/statement.h"
#include "model/studio/questions.h"

namespace lowledger::store {
namespace {

/// A studio open for reading only may be copied; SQLite counts that as writing.
class WritingAllowed {
  public:
    WritingAllowed(SQLite::Database& database, Access access)
        : database_(database), restore_(access == Access::read_only) {
        if (restore_) database_.exec("PRAGMA query_only = OFF");
    }
    WritingAllowed(const WritingAllowed&) = delete;
    WritingAllowed& operator=(const WritingAllowed&) = delete;
    ~WritingAllowed() {
        if (restore_) database_.tryExec("PRAGMA query_only = ON");
    }

  private:
    SQLite::Database& database_;
    bool restore_;
};

}  // namespace

StudioFile::StudioFile(std::unique_ptr<Implementation> implementation)
    : implementation_(std::move(implementation)) {}
StudioFile::StudioFile(StudioFile&&) noexcept = default;
StudioFile& StudioFile::operator=(StudioFile&&) noexcept = default;
StudioFile::~StudioFile() = default;

StudioFile StudioFile::create(const std::filesystem::path& path, const studio::StudioFacts& facts) {
    FileInTheMaking file(path);
    refusing(Task::create, path, [&] { make_empty_studio(file.temporary(), facts); });
    file.finish();
    return open(path);
}

StudioFile StudioFile::open(const std::filesystem::path& path, Access access) {
    return StudioFile(std::make_unique<Implementation>(path, access));
}

const std::filesystem::path& StudioFile::path() const {
    return implementation_->path;
}

Access StudioFile::access() const {
    return implementation_->access;
}

std::int64_t StudioFile::revision() const {
    refusing(Task::read, implementation_->path, [&] { implementation_->look_elsewhere(); });
    return implementation_->revision;
}

studio::StudioFacts StudioFile::facts() const {
    return implementation_->read(read_facts);
}

std::vector<studio::OwnText> StudioFile::own_texts() const {
    return implementation_->read(read_own_texts);
}

std::optional<studio::HeadPicture> StudioFile::head_picture() const {
    return implementation_->read(read_head_picture);
}

std::vector<studio::Student> StudioFile::students() const {
    return implementation_->read(read_students);
}

std::optional<studio::Student> StudioFile::student(studio::StudentId id) const {
    return implementation_->read([&](auto& database) { return read_student(database, id); });
}

std::vector<studio::Horn> StudioFile::horns() const {
    return implementation_->read(read_horns);
}

std::optional<studio::Horn> StudioFile::horn(studio::HornId id) const {
    return implementation_->read([&](auto& database) { return read_horn(database, id); });
}

std::vector<studio::SlidePosition> StudioFile::slide_history(studio::HornId id) const {
    return implementation_->read([&](auto& database) { return read_slide_history(database, id); });
}

std::map<std::string, units::Millimetres> StudioFile::slide_positions(studio::HornId id,
                                                                      studio::Date on) const {
    return studio::positions_on(slide_history(id), on);
}

std::vector<studio::HornUse> StudioFile::horn_uses() const {
    return implementation_->read([](auto& database) { return read_horn_uses(database); });
}

std::vector<studio::HornUse> StudioFile::horn_uses(studio::StudentId id) const {
    return implementation_->read([&](auto& database) { return read_horn_uses(database, id); });
}

std::vector<studio::HornUse> StudioFile::horn_uses(studio::HornId id) const {
    return implementation_->read([&](auto& database) { return read_horn_uses(database, id); });
}

std::vector<studio::TuningSheet> StudioFile::sheets(studio::StudentId student) const {
    return implementation_->read([&](auto& database) { return read_sheets(database, student); });
}

std::vector<studio::TuningSheet> StudioFile::sheets(studio::HornId horn) const {
    return implementation_->read([&](auto& database) { return read_sheets(database, horn); });
}

std::optional<studio::TuningSheet> StudioFile::sheet(studio::TuningSheetId id) const {
    return implementation_->read([&](auto& database) { return read_sheet(database, id); });
}

std::vector<studio::GivenSettings> StudioFile::given_settings(studio::StudentId id) const {
    return implementation_->read([&](auto& database) { return read_given_settings(database, id); });
}

std::vector<studio::GivenSettings> StudioFile::given_settings(studio::HornId id) const {
    return implementation_->read([&](auto& database) { return read_given_settings(database, id); });
}

std::string StudioFile::dump() const {
    return implementation_->read(dump_records);
}

std::vector<std::string> StudioFile::check() const {
    try {
        return implementation_->read(faults);
    } catch (const StudioDamaged& damage) {
        return {damage.what()};
    }
}

void StudioFile::copy_to(const std::filesystem::path& path) const {
    FileInTheMaking copy(path);
    refusing(Task::copy, implementation_->path, [&] {
        const WritingAllowed allowed(implementation_->database(), implementation_->access);
        Statement(implementation_->database(), "VACUUM INTO ?1")
            .with(std::filesystem::absolute(copy.temporary()).string())
            .run();
    });
    copy.finish();
}

}  // namespace lowledger::store
