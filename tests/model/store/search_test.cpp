// Finding anything by its words, and that the index is what the records say after every edit, undo and redo.
#include "model/store/search.h"

#include <SQLiteCpp/Database.h>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <random>
#include <sstream>

#include "model/store/schema.h"
#include "tests/model/store/invented.h"
#include "tests/model/store/invented_book.h"

namespace lowledger::store {
namespace {

using studio::Date;
using studio::Found;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

class Search : public testing::Test {
  protected:
    std::vector<Found::Kind> kinds(std::string_view typed) {
        std::vector<Found::Kind> kinds;
        for (const Found& found : file_.search(typed))
            kinds.push_back(found.kind);
        return kinds;
    }

    /// By another connection, straight from the tables.
    void expect_index_is_true() {
        SQLite::Database database(path_.string(), SQLite::OPEN_READWRITE);
        std::string all;
        SQLite::Statement views(database, "SELECT name FROM sqlite_schema WHERE type = 'view'");
        while (views.executeStep()) {
            all += (all.empty() ? "" : " UNION ALL ") + std::string("SELECT search_id, text FROM ") +
                   views.getColumn(0).getString() + " WHERE text <> ''";
        }
        const auto differ = [&](const std::string& a, const std::string& b) {
            return database.execAndGet("SELECT count(*) FROM (" + a + " EXCEPT " + b + ")").getInt();
        };
        all = "SELECT * FROM (" + all + ")";
        const std::string indexed = "SELECT rowid, text FROM record_search";
        EXPECT_EQ(differ(all, indexed), 0);
        EXPECT_EQ(differ(indexed, all), 0);
        EXPECT_EQ(database.execAndGet("SELECT count(*) FROM search_stale").getInt(), 0);
        EXPECT_NO_THROW(
            database.exec("INSERT INTO record_search (record_search) VALUES ('integrity-check')"));
    }

    invented::Folder folder_;
    std::filesystem::path path_ = folder_ / "search.lowledger";
    StudioFile file_ = StudioFile::create(path_, invented::facts());
};

TEST_F(Search, FindsByBeginningsOfWordsWithoutAccentsAndCase) {
    file_.edit("Fill", [](Edit& edit) { invented::add_book(edit); });
    EXPECT_THAT(kinds("cafe"), ElementsAre(Found::Kind::piece));
    EXPECT_THAT(kinds("CAF nig"), ElementsAre(Found::Kind::piece));
    EXPECT_THAT(kinds("night café"), ElementsAre(Found::Kind::piece));
    EXPECT_THAT(kinds("afé"), IsEmpty());
    EXPECT_THAT(kinds("alteste ubu"), ElementsAre(Found::Kind::routine));
    EXPECT_THAT(kinds("e-1"), ElementsAre(Found::Kind::horn));
    EXPECT_THAT(kinds("crossing"), ElementsAre(Found::Kind::lesson));
    EXPECT_THAT(kinds("tired"), ElementsAre(Found::Kind::lesson));
    for (const char* nothing : {"", "   ", "\"", "-", "*", "()", "- \" ^", "zzz", "NEAR(a b)", "tired AND"})
        EXPECT_THAT(kinds(nothing), IsEmpty()) << nothing;
    EXPECT_THAT(kinds("tired \" - *"), ElementsAre(Found::Kind::lesson));
    for (int c = 1; c < 128; ++c)
        EXPECT_NO_THROW((void)file_.search(std::string("a") + static_cast<char>(c) + "b")) << c;
}

TEST_F(Search, TellsWhoseItIs) {
    invented::Book book;
    file_.edit("Fill", [&](Edit& edit) { book = invented::add_book(edit); });
    const auto pieces = file_.search("moths");
    ASSERT_THAT(pieces, SizeIs(1));
    EXPECT_EQ(pieces[0].student, book.first);
    EXPECT_EQ(pieces[0].on, invented::plain_piece(book.first).from);
    EXPECT_EQ(pieces[0].excerpt, "March of the Moths");
    const auto horns = file_.search("dent town band");
    ASSERT_THAT(horns, SizeIs(1));
    EXPECT_EQ(horns[0].horn, book.horn);
    EXPECT_EQ(horns[0].number, book.horn.number);
    EXPECT_EQ(horns[0].student, book.second);
    EXPECT_FALSE(horns[0].on.has_value());
}

TEST_F(Search, PutsPeopleAndHornsFirstAndThenTheNewest) {
    file_.edit("Fill", [](Edit& edit) {
        const auto student = edit.add(invented::plain_student("Dora Echo"));
        for (const Date on : {Date(2024, 2, 29), Date(2026, 1, 31), Date(1999, 12, 31)}) {
            auto lesson = invented::plain_lesson(student, on);
            lesson.done = "an echo";
            edit.add(lesson);
        }
    });
    const auto found = file_.search("echo");
    ASSERT_THAT(found, SizeIs(4));
    EXPECT_EQ(found[0].kind, Found::Kind::student);
    EXPECT_EQ(found[1].on, Date(2026, 1, 31));
    EXPECT_EQ(found[2].on, Date(2024, 2, 29));
    EXPECT_EQ(found[3].on, Date(1999, 12, 31));
    EXPECT_THAT(file_.search("echo", 2), ElementsAre(found[0], found[1]));
}

TEST_F(Search, FollowsEditsUndoAndRedo) {
    invented::Book book;
    file_.edit("Fill", [&](Edit& edit) { book = invented::add_book(edit); });
    expect_index_is_true();
    file_.edit("Move", [&](Edit& edit) {
        auto lesson = *file_.lesson(book.group_lesson);
        lesson.on = lesson.on + 40;
        lesson.done = "scales";
        edit.update(lesson);
        lesson.on = lesson.on + 1;
        edit.update(lesson);
    });
    expect_index_is_true();
    EXPECT_THAT(kinds("scales"), SizeIs(1));
    file_.undo();
    expect_index_is_true();
    EXPECT_THAT(kinds("scales"), IsEmpty());
    file_.redo();
    EXPECT_THAT(kinds("scales"), SizeIs(1));
    file_.edit("Delete", [&](Edit& edit) { edit.remove(book.first); });
    expect_index_is_true();
    EXPECT_THAT(kinds("moths"), IsEmpty());
    file_.undo();
    expect_index_is_true();
    EXPECT_THAT(kinds("moths"), SizeIs(1));
    file_.undo();
    file_.undo();
    expect_index_is_true();
    EXPECT_THAT(kinds("tired"), IsEmpty());
}

TEST_F(Search, AnEditThatThrowsLeavesTheIndex) {
    EXPECT_THROW(file_.edit("Half",
                            [](Edit& edit) {
                                edit.add(invented::plain_student("Nobody"));
                                throw std::out_of_range("on purpose");
                            }),
                 std::out_of_range);
    expect_index_is_true();
    EXPECT_THAT(kinds("nobody"), IsEmpty());
}

TEST_F(Search, HasTheWordsOfAnOlderStudio) {
    const auto old = folder_ / "old.lowledger";
    {
        std::ifstream in(std::string(LOWLEDGER_SOURCE) + "/tests/data/studio-version-1.sql");
        std::ostringstream sql;
        sql << in.rdbuf();
        SQLite::Database database(old.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        database.exec(sql.str());
    }
    const auto found = StudioFile::open(old).search("draughty");
    ASSERT_THAT(found, SizeIs(1));
    EXPECT_EQ(found[0].kind, Found::Kind::sheet);
}

TEST_F(Search, ADeletedStudentsWordsAreNoLongerInTheFile) {
    studio::StudentId student;
    file_.edit("Fill", [&](Edit& edit) {
        student = edit.add(invented::plain_student("Xanthippaq"));
        auto lesson = invented::plain_lesson(student, Date(2026, 1, 31));
        lesson.private_remark = "wobblyquark";
        edit.add(lesson);
        edit.add(invented::plain_student("Stays"));
    });
    file_.edit("Delete", [&](Edit& edit) { edit.remove(student); });
    { const StudioFile closing = std::move(file_); }
    std::ifstream in(path_, std::ios::binary);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    EXPECT_THAT(bytes.str(), Not(HasSubstr("anthippaq")));
    EXPECT_THAT(bytes.str(), Not(HasSubstr("wobblyqu")));
    EXPECT_THAT(bytes.str(), HasSubstr("Stays"));
}

}  // namespace
}  // namespace lowledger::store
