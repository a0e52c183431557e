// The tables themselves: rules that hold whoever writes, indices, and steps from version to version.
#include "model/store/schema.h"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Exception.h>
#include <SQLiteCpp/Statement.h>
#include <cmath>
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <limits>

#include "model/store/book_queries.h"
#include "model/store/queries.h"
#include "model/store/search_queries.h"
#include "tests/model/store/invented.h"

namespace lowledger::store {
namespace {

using testing::ElementsAreArray;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

SQLite::Database fresh() {
    SQLite::Database database(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    migrate(database, built_in_migrations());
    return database;
}

std::vector<std::string> column(SQLite::Database& database, const std::string& sql) {
    std::vector<std::string> values;
    SQLite::Statement rows(database, sql);
    while (rows.executeStep())
        values.push_back(rows.getColumn(0).getString());
    return values;
}

TEST(Schema, EveryTableIsStrictAndFollowed) {
    SQLite::Database database = fresh();
    const auto tables = column(
        database,
        "SELECT name FROM pragma_table_list WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND strict "
        "AND name <> 'search_stale'");
    EXPECT_THAT(tables, testing::UnorderedElementsAreArray(record_tables.begin(), record_tables.end()));
    EXPECT_THAT(column(database,
                       "SELECT name FROM pragma_table_list WHERE type = 'table' AND name NOT LIKE "
                       "'sqlite_%' AND NOT strict"),
                IsEmpty());
}

TEST(Schema, ReferencesNeverCascade) {
    SQLite::Database database = fresh();
    EXPECT_THAT(column(database,
                       "SELECT l.name || '.' || f.\"from\" FROM pragma_table_list l, "
                       "pragma_foreign_key_list(l.name) f WHERE f.on_delete <> 'NO ACTION' "
                       "OR f.on_update <> 'NO ACTION'"),
                IsEmpty());
}

TEST(Schema, TheHeaderTellsWhatFileItIs) {
    SQLite::Database database = fresh();
    EXPECT_EQ(database.execAndGet("PRAGMA application_id").getInt64(), application_id);
    EXPECT_EQ(schema_version(database), built_in_migrations().back().version);
}

TEST(Schema, EveryQueryGoesByAnIndexAndSortsNothing) {
    SQLite::Database database = fresh();
    int steps = 0;
    std::vector<std::string_view> all(queries::all.begin(), queries::all.end());
    all.insert(all.end(), queries::book.begin(), queries::book.end());
    all.insert(all.end(), queries::owners.begin(), queries::owners.end());
    for (const std::string_view query : all) {
        SQLite::Statement plan(database, "EXPLAIN QUERY PLAN " + std::string(query));
        while (plan.executeStep()) {
            const std::string step = plan.getColumn(3).getString();
            ++steps;
            EXPECT_THAT(step, Not(HasSubstr("TEMP B-TREE"))) << query;
            // The teacher's own sentences are few and kept in the order of their key.
            if (step == "SCAN CONSTANT ROW" || step == "SCAN studio_text") continue;
            if (step.starts_with("SCAN")) {
                EXPECT_THAT(step, testing::ContainsRegex("USING (COVERING )?INDEX")) << query;
            }
        }
    }
    EXPECT_GE(steps, int(all.size()));
}

struct Broken {
    const char* what;
    std::function<void(Edit&, studio::StudentId, studio::HornId)> edit;
    const char* rule;
};

void PrintTo(const Broken& broken, std::ostream* out) {
    *out << broken.what;
}

class Rules : public testing::TestWithParam<Broken> {};

TEST_P(Rules, AreSaidInWordsAndNothingIsFiled) {
    const invented::Folder folder;
    const auto path = folder / "rules.lowledger";
    StudioFile file = StudioFile::create(path, invented::facts());
    studio::StudentId student;
    studio::HornId horn;
    file.edit("Add", [&](Edit& edit) {
        student = edit.add(invented::plain_student());
        horn = edit.add(invented::plain_horn());
    });
    const std::string before = file.dump();
    const std::string sentence = invented::sentence_of(
        [&] { file.edit("Break", [&](Edit& edit) { GetParam().edit(edit, student, horn); }); });
    EXPECT_THAT(sentence, testing::AllOf(HasSubstr(path.string()), HasSubstr(GetParam().rule)));
    EXPECT_EQ(file.dump(), before);
    EXPECT_EQ(file.undo_name(), "Add");
}

/// A sheet after `change`.
template <typename Change>
auto sheet_with(Change change) {
    return [change](Edit& edit, studio::StudentId student, studio::HornId horn) {
        studio::TuningSheet sheet = invented::full_sheet(student, horn);
        change(sheet);
        edit.add(sheet);
    };
}

template <typename Change>
auto horn_with(Change change) {
    return [change](Edit& edit, studio::StudentId, studio::HornId) {
        studio::Horn horn = invented::plain_horn();
        change(horn);
        edit.add(horn);
    };
}

INSTANTIATE_TEST_SUITE_P(
    Students, Rules,
    testing::Values(Broken{"no name", [](Edit& edit, auto, auto) { edit.add(invented::plain_student("  ")); },
                           "a student has a name"},
                    Broken{"tolerance 0",
                           [](Edit& edit, auto, auto) {
                               studio::Student student = invented::plain_student();
                               student.tolerance = units::Cents(0.0);
                               edit.add(student);
                           },
                           "a tolerance is above 0"},
                    Broken{"tolerance not a number",
                           [](Edit& edit, auto, auto) {
                               studio::Student student = invented::plain_student();
                               student.tolerance = units::Cents(std::nan(""));
                               edit.add(student);
                           },
                           "not a finite number"},
                    Broken{"unknown student",
                           [](Edit& edit, auto, auto) {
                               studio::Student student = invented::plain_student();
                               student.id = {99};
                               edit.update(student);
                           },
                           "the student is no longer there"},
                    Broken{"remove unknown student",
                           [](Edit& edit, auto, auto) { edit.remove(studio::StudentId{99}); },
                           "the student is no longer there"}));

INSTANTIATE_TEST_SUITE_P(
    Horns, Rules,
    testing::Values(
        Broken{"no kind", horn_with([](studio::Horn& horn) { horn.kind_id.clear(); }), "a horn has a kind"},
        Broken{"unknown owner", horn_with([](studio::Horn& horn) { horn.owner = studio::StudentId{99}; }),
               "that is not there"},
        Broken{"a slide twice", horn_with([](studio::Horn& horn) { horn.slides.push_back(horn.slides[0]); }),
               "main slide is listed twice"},
        Broken{"least above travel",
               horn_with([](studio::Horn& horn) { horn.slides[0].least = units::Millimetres(96.0); }),
               "a slide's least lies between 0 and its travel"},
        Broken{"travel beyond all horns",
               horn_with([](studio::Horn& horn) { horn.slides[0].travel = units::Millimetres(2001.0); }),
               "travel is at most 2000 mm"},
        Broken{"position of a slide it has not",
               [](Edit& edit, auto, studio::HornId horn) {
                   edit.add(invented::position(horn, "sixth", studio::Date(2026, 1, 1), 3.0));
               },
               "that is not there"},
        Broken{"negative position",
               [](Edit& edit, auto, studio::HornId horn) {
                   edit.add(invented::position(horn, "main", studio::Date(2026, 1, 1), -0.5));
               },
               "a slide stands between 0 and 2000 mm"},
        Broken{"infinite position",
               [](Edit& edit, auto, studio::HornId horn) {
                   edit.add(invented::position(horn, "main", studio::Date(2026, 1, 1),
                                               std::numeric_limits<double>::infinity()));
               },
               "not a finite number"},
        Broken{"use that ends before it starts",
               [](Edit& edit, studio::StudentId student, studio::HornId horn) {
                   studio::HornUse use = invented::use(student, horn);
                   use.until = use.from - 1;
                   edit.add(use);
               },
               "given back no earlier"},
        Broken{"use of an unknown horn",
               [](Edit& edit, studio::StudentId student, auto) { edit.add(invented::use(student, {99})); },
               "that is not there"}));

INSTANTIATE_TEST_SUITE_P(
    Sheets, Rules,
    testing::Values(
        Broken{"unknown student", sheet_with([](auto& sheet) { sheet.student = {99}; }), "that is not there"},
        Broken{"a note twice", sheet_with([](auto& sheet) { sheet.readings.push_back(sheet.readings[1]); }),
               "F2 with valves 124 stands twice in take 1"},
        Broken{"1201 cents", sheet_with([](auto& sheet) { sheet.readings[0].cents = units::Cents(1201); }),
               "within an octave"},
        Broken{"not a number",
               sheet_with([](auto& sheet) { sheet.readings[0].cents = units::Cents(std::nan("")); }),
               "not a finite number"},
        Broken{"take 0", sheet_with([](auto& sheet) { sheet.readings[0].take = 0; }), "takes count from 1"},
        Broken{"partial 33", sheet_with([](auto& sheet) { sheet.readings[0].partial = 33; }),
               "a partial lies between"},
        Broken{"eighth position", sheet_with([](auto& sheet) { sheet.readings[0].fingering.position = 8; }),
               "seven positions"},
        Broken{"A4 at 44 Hz", sheet_with([](auto& sheet) { sheet.tuner_a4 = units::Hertz(44); }),
               "A4 lies between"},
        Broken{"a room at 70 F", sheet_with([](auto& sheet) { sheet.room = units::Celsius(70); }),
               "a room is between"},
        Broken{"settings of no sheet",
               [](Edit& edit, studio::StudentId student, studio::HornId horn) {
                   studio::GivenSettings settings = invented::settings(student, horn);
                   settings.sheet = studio::TuningSheetId{99};
                   edit.add(settings);
               },
               "that is not there"},
        Broken{"settings of half JSON",
               [](Edit& edit, studio::StudentId student, studio::HornId horn) {
                   studio::GivenSettings settings = invented::settings(student, horn);
                   settings.json = "{\"format\": ";
                   edit.add(settings);
               },
               "not whole JSON"}));

TEST(Schema, RefusesByItselfWhatOtherProgramsMayTry) {
    SQLite::Database database = fresh();
    database.exec(
        "INSERT INTO student (id, name, called, group_name, level, remarks, archived) VALUES "
        "(1, 'A', '', '', 'beginner', '', 0)");
    database.exec(
        "INSERT INTO horn (id, kind_id, kind_text, mark, maker_and_model, serial_number, remarks, archived) "
        "VALUES (1, 'k', '', 'T', '', '', '', 0)");
    database.exec("INSERT INTO tuning_sheet VALUES (1, 1, 1, '2026-11-25', '', 1, 0, 0, NULL, 440, '')");
    for (const char* wrong :
         {"UPDATE student SET level = 'expert'", "UPDATE student SET archived = 2",
          "UPDATE student SET tolerance_cents = 'few'", "UPDATE student SET name = NULL",
          "UPDATE tuning_sheet SET on_date = '2026-02-30'", "UPDATE tuning_sheet SET on_date = '25.11.2026'",
          "UPDATE tuning_sheet SET on_date = '2026-11-25 12:00'", "UPDATE tuning_sheet SET on_date = 'now'",
          "UPDATE tuning_sheet SET on_date = '1899-12-31'", "UPDATE tuning_sheet SET warm = 'yes'",
          "INSERT INTO reading VALUES (1, 46, '9', 0, 4, 1, 0, 0)",
          "INSERT INTO reading VALUES (1, 46, '', 0, 4, 1, 0, 0)",
          "INSERT INTO reading VALUES (1, 128, '0', 0, 4, 1, 0, 0)",
          "INSERT INTO reading VALUES (2, 46, '0', 0, 4, 1, 0, 0)",
          "INSERT INTO studio VALUES (2, '', '', '', 440, 20, 'a4', 'flats', 'english', '')",
          "INSERT INTO horn_use VALUES (1, 1, 1, '2026-11-25', '2026-11-24')",
          "INSERT INTO horn_use VALUES (1, 1, 1, '2026-11-25', '2026-11-31')", "DELETE FROM student",
          "DELETE FROM horn"}) {
        EXPECT_THROW(database.exec(wrong), SQLite::Exception) << wrong;
    }
    EXPECT_NO_THROW(database.exec("INSERT INTO horn_use VALUES (1, 1, 1, '2026-11-25', '2026-11-25')"));
}

/// The built-in steps and one that a later version might bring: it rebuilds a table that others refer to.
std::vector<Migration> with_a_later_one(std::string_view sql) {
    std::vector<Migration> migrations = built_in_migrations();
    migrations.push_back({migrations.back().version + 1, "a later one", sql});
    return migrations;
}

TEST(Migrations, AreNumberedWithoutAGap) {
    int expected = 1;
    for (const Migration& migration : built_in_migrations()) {
        EXPECT_EQ(migration.version, expected);
        EXPECT_THAT(std::string(migration.name), StartsWith(fmt::format("{:03}_", expected)));
        ++expected;
    }
    EXPECT_GT(expected, 1);
}

class LaterVersion : public testing::Test {
  protected:
    LaterVersion() {
        StudioFile file = StudioFile::create(path_, invented::facts());
        file.edit("Fill", [](Edit& edit) {
            const auto student = edit.add(invented::full_student());
            edit.add(invented::full_sheet(student, edit.add(invented::full_horn(student))));
        });
        before_ = file.dump();
    }

    invented::Folder folder_;
    std::filesystem::path path_ = folder_ / "old.lowledger";
    std::string before_;
};

TEST_F(LaterVersion, TakesAnOlderFileAlongWithItsRecords) {
    constexpr std::string_view sql = R"(
        CREATE TABLE new_student (id INTEGER PRIMARY KEY AUTOINCREMENT, name TEXT NOT NULL, clef TEXT NOT NULL) STRICT;
        INSERT INTO new_student SELECT id, name, 'bass' FROM student;
        DROP TABLE student;
        ALTER TABLE new_student RENAME TO student;)";
    SQLite::Database database(path_.string(), SQLite::OPEN_READWRITE);
    const int version = schema_version(database);
    migrate(database, with_a_later_one(sql));
    EXPECT_EQ(schema_version(database), version + 1);
    EXPECT_THAT(column(database, "SELECT name || clef FROM student"),
                ElementsAreArray({invented::full_student().name + "bass"}));
    EXPECT_THAT(column(database, "SELECT count(*) FROM reading"), ElementsAreArray({"7"}));
    EXPECT_THAT(faults(database), IsEmpty());
    EXPECT_EQ(database.execAndGet("PRAGMA foreign_keys").getInt(), 1);
    // Once more is nothing.
    migrate(database, with_a_later_one(sql));
    EXPECT_EQ(schema_version(database), version + 1);
    EXPECT_THROW(StudioFile::open(path_), StudioNewer);
}

TEST_F(LaterVersion, ThatFailsHalfWayLeavesTheFileAsItWas) {
    {
        SQLite::Database database(path_.string(), SQLite::OPEN_READWRITE);
        EXPECT_THROW(migrate(database, with_a_later_one(
                                           "ALTER TABLE student ADD COLUMN clef TEXT; DROP TABLE nothing;")),
                     SQLite::Exception);
    }
    {
        SQLite::Database database(path_.string(), SQLite::OPEN_READWRITE);
        EXPECT_THAT(
            invented::sentence_of<StudioDamaged>(
                [&] { migrate(database, with_a_later_one("DELETE FROM student;")); }),
            testing::AllOf(HasSubstr(path_.string()), HasSubstr("names a missing record of student")));
    }
    EXPECT_EQ(StudioFile::open(path_).dump(), before_);
}

TEST_F(LaterVersion, ABrandNewFileTakesAllSteps) {
    SQLite::Database database(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    migrate(database, with_a_later_one("CREATE TABLE later (id INTEGER PRIMARY KEY AUTOINCREMENT) STRICT;"));
    EXPECT_THAT(column(database, "SELECT name FROM pragma_table_list WHERE name = 'later'"),
                ElementsAreArray({"later"}));
}

TEST_F(LaterVersion, AnOlderFileIsBroughtUpToDateOnOpeningButNotForReadingOnly) {
    // Version 0 with our mark stands for a file before the first step.
    const auto older = folder_ / "older.lowledger";
    {
        SQLite::Database database(older.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        database.exec(fmt::format("PRAGMA application_id = {}", application_id));
    }
    EXPECT_THAT(invented::sentence_of<StudioReadOnly>([&] { StudioFile::open(older, Access::read_only); }),
                HasSubstr("open it once for writing"));
    const StudioFile file = StudioFile::open(older);
    EXPECT_THAT(file.students(), IsEmpty());
}

}  // namespace
}  // namespace lowledger::store
