// A studio that an earlier version of the program wrote opens with everything in it.
// tests/data/studio-version-N.sql is such a studio as SQL, written by the program of that version from the
// records of invented.cpp.
#include <SQLiteCpp/Database.h>
#include <fmt/format.h>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sstream>

#include "model/store/schema.h"
#include "tests/model/store/invented.h"

namespace lowledger::store {
namespace {

using studio::Date;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

void write_old_studio(const std::filesystem::path& path, int version) {
    std::ifstream in(fmt::format("{}/tests/data/studio-version-{}.sql", LOWLEDGER_SOURCE, version));
    std::ostringstream sql;
    sql << in.rdbuf();
    SQLite::Database database(path.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    database.exec("PRAGMA journal_mode = MEMORY");
    database.exec(sql.str());
}

class FirstVersion : public testing::Test {
  protected:
    FirstVersion() { write_old_studio(path_, 1); }

    invented::Folder folder_;
    std::filesystem::path path_ = folder_ / "old.lowledger";
};

/// What version 1 did not know of.
studio::StudioFacts first_facts() {
    studio::StudioFacts facts = invented::facts();
    facts.naming = units::Naming::english;
    facts.currency.clear();
    return facts;
}

studio::Student first_student() {
    studio::Student student = invented::full_student();
    student.id = {1};
    student.reader.clear();
    student.accidentals.reset();
    student.year.clear();
    student.at_home.reset();
    student.guardian = {};
    student.goals.clear();
    student.since.reset();
    return student;
}

studio::Horn first_horn() {
    studio::Horn horn = invented::full_horn({1});
    horn.id = {1};
    for (std::string* text : {&horn.inventory_tag, &horn.belongs_to, &horn.case_text, &horn.locker,
                              &horn.accessories, &horn.condition})
        text->clear();
    horn.value.reset();
    horn.bought_on.reset();
    horn.bought_for.reset();
    return horn;
}

void expect_all_its_records(const StudioFile& file) {
    const studio::StudentId full{1};
    const studio::StudentId plain{2};
    EXPECT_EQ(file.facts(), first_facts());
    EXPECT_EQ(file.student(full), first_student());
    EXPECT_EQ(file.student(plain)->name, invented::plain_student().name);
    EXPECT_EQ(file.horn({1}), first_horn());
    EXPECT_EQ(file.slide_positions({1}, Date(2026, 11, 25)).at("main"), units::Millimetres(20.0));
    EXPECT_EQ(file.horn_uses(plain).at(0).until, Date(2026, 12, 31));
    studio::TuningSheet sheet = invented::full_sheet(full, {1});
    sheet.id = {1};
    EXPECT_EQ(file.sheet({1}), sheet);
    EXPECT_EQ(file.sheets(plain).size(), 1U);
    EXPECT_EQ(file.given_settings(full).at(0).moved_on, Date(2026, 11, 26));
    EXPECT_THAT(file.own_texts(), IsEmpty());
    EXPECT_EQ(file.head_picture(), std::nullopt);
    EXPECT_THAT(file.check(), IsEmpty());
}

TEST_F(FirstVersion, OpensWithAllItsRecords) {
    StudioFile file = StudioFile::open(path_);
    expect_all_its_records(file);
    const std::string before = file.dump();
    file.edit("Add", [](Edit& edit) { edit.add(invented::full_student()); });
    EXPECT_EQ(file.student({3})->reader, invented::full_student().reader);
    file.undo();
    EXPECT_EQ(file.dump(), before);
}

TEST_F(FirstVersion, BecomesWhatANewStudioIs) {
    const auto schema = [](const std::filesystem::path& path) {
        SQLite::Database database(path.string(), SQLite::OPEN_READONLY);
        std::string text;
        SQLite::Statement rows(database, "SELECT type, name FROM sqlite_schema ORDER BY type, name");
        while (rows.executeStep())
            text += rows.getColumn(0).getString() + " " + rows.getColumn(1).getString() + "\n";
        SQLite::Statement columns(
            database,
            "SELECT t.name, c.name, c.type, c.\"notnull\" FROM sqlite_schema t, pragma_table_info(t.name) c "
            "WHERE t.type = 'table' ORDER BY t.name, c.cid");
        while (columns.executeStep()) {
            for (int i = 0; i < 4; ++i)
                text += columns.getColumn(i).getString() + " ";
            text += "\n";
        }
        return text;
    };
    { StudioFile::open(path_); }
    { StudioFile::create(folder_ / "new.lowledger", invented::facts()); }
    EXPECT_EQ(schema(path_), schema(folder_ / "new.lowledger"));
}

TEST_F(FirstVersion, IsKeptAsItWasBesideTheNewOne) {
    { StudioFile::open(path_); }
    EXPECT_THAT(folder_.names(), ElementsAre("old (version 1).lowledger", "old.lowledger"));
    {
        SQLite::Database kept((folder_ / "old (version 1).lowledger").string(), SQLite::OPEN_READONLY);
        EXPECT_EQ(schema_version(kept), 1);
        EXPECT_EQ(kept.execAndGet("SELECT count(*) FROM reading").getInt(), 7);
    }
    // It is a studio like any other, and a copy that is there already is not replaced.
    std::filesystem::remove(path_);
    std::filesystem::copy_file(folder_ / "old (version 1).lowledger", path_);
    expect_all_its_records(StudioFile::open(path_));
    EXPECT_THAT(folder_.names(),
                ElementsAre("old (version 1).lowledger", "old (version 1, 2).lowledger", "old.lowledger"));
}

TEST_F(FirstVersion, IsNotChangedByOpeningItForReadingOnly) {
    EXPECT_THAT(invented::sentence_of<StudioReadOnly>([&] { StudioFile::open(path_, Access::read_only); }),
                HasSubstr("open it once for writing"));
    EXPECT_THAT(folder_.names(), ElementsAre("old.lowledger"));
    SQLite::Database database(path_.string(), SQLite::OPEN_READONLY);
    EXPECT_EQ(schema_version(database), 1);
}

}  // namespace
}  // namespace lowledger::store
