// What opens and what does not, what is said then, and how the file lies on the disk.
#include <SQLiteCpp/Database.h>
#include <fmt/format.h>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "model/store/connection.h"
#include "model/store/schema.h"
#include "tests/model/store/child.h"
#include "tests/model/store/invented.h"
#include "tests/model/store/unhappy_disk.h"

namespace lowledger::store {
namespace {

namespace fs = std::filesystem;
using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

std::string bytes_of(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

void write(const fs::path& path, std::string_view bytes) {
    std::ofstream(path, std::ios::binary) << bytes;
}

class Opening : public testing::Test {
  protected:
    /// A studio with so many records that it has pages of every kind.
    fs::path a_studio(const std::string& name = "a.lowledger") {
        fs::path path = folder_ / name;
        StudioFile file = StudioFile::create(path, invented::facts());
        file.edit("Fill", [](Edit& edit) {
            for (int i = 0; i < 60; ++i) {
                studio::Student student = invented::full_student();
                student.remarks.append(200, 'r');
                const auto id = edit.add(student);
                edit.add(invented::full_sheet(id, edit.add(invented::full_horn(id))));
            }
        });
        return path;
    }

    template <typename Refused>
    void expect_refused(const fs::path& path, const std::string& words, Access access = Access::read_write) {
        EXPECT_THAT(invented::sentence_of<Refused>([&] { StudioFile::open(path, access); }),
                    AllOf(HasSubstr(path.string()), HasSubstr(words)));
    }

    invented::Folder folder_;
};

TEST_F(Opening, NothingThere) {
    expect_refused<StudioMissing>(folder_ / "none.lowledger", "check the name");
    expect_refused<StudioMissing>(folder_ / "no folder" / "none.lowledger", "check the name");
    EXPECT_THAT(folder_.names(), IsEmpty());
}

TEST_F(Opening, WhatIsNoStudio) {
    expect_refused<NotAStudio>(folder_.path(), "is a folder");
    write(folder_ / "empty", "");
    expect_refused<NotAStudio>(folder_ / "empty", "is empty");
    write(folder_ / "text", "note,fingering,cents\nBb1,0,-7\n");
    expect_refused<NotAStudio>(folder_ / "text", "is not a studio");
    write(folder_ / "long text", std::string(10'000, 'x'));
    expect_refused<NotAStudio>(folder_ / "long text", "is not a studio");
    {
        SQLite::Database other((folder_ / "other").string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        other.exec("CREATE TABLE student (id INTEGER PRIMARY KEY)");
    }
    expect_refused<NotAStudio>(folder_ / "other", "a database of another program");
    EXPECT_EQ(bytes_of(folder_ / "text"), "note,fingering,cents\nBb1,0,-7\n");
    EXPECT_EQ(fs::file_size(folder_ / "empty"), 0U);
    EXPECT_THAT(folder_.names(), ElementsAre("empty", "long text", "other", "text"));
}

TEST_F(Opening, ACutOffStudio) {
    const fs::path path = a_studio();
    const std::string whole = bytes_of(path);
    for (const std::size_t kept : {whole.size() - 1, whole.size() / 2, std::size_t(4096), std::size_t(700)}) {
        write(path, whole.substr(0, kept));
        expect_refused<units::Refusal>(path, "go back to a copy");
        EXPECT_TRUE(bytes_of(path) == whole.substr(0, kept));
    }
    write(path, whole);
    EXPECT_THAT(StudioFile::open(path).students(), SizeIs(60));
}

TEST_F(Opening, ADamagedPageIsToldByNameAndNothingElseHappens) {
    const fs::path path = a_studio();
    const std::string whole = bytes_of(path);
    constexpr std::size_t page_size = 4096;
    int told = 0;
    for (std::size_t page = 1; page < whole.size() / page_size; ++page) {
        std::string damaged = whole;
        damaged.replace(page * page_size, page_size, page_size, '\x5a');
        write(path, damaged);
        // Wherever it shows, at opening, reading, filing or checking, it is a refusal that names the file.
        std::vector<std::string> found;
        const std::string sentence = invented::sentence_of([&] {
            const StudioFile file = StudioFile::open(path);
            found = file.check();
            (void)file.dump();
        });
        EXPECT_TRUE(!found.empty() || !sentence.empty()) << "page " << page;
        if (!sentence.empty()) {
            ++told;
            EXPECT_THAT(sentence, AllOf(HasSubstr(path.string()), HasSubstr("copy"))) << "page " << page;
        }
    }
    EXPECT_GT(told, 5);
}

TEST_F(Opening, ValuesThatTheProgramNeverFiles) {
    const fs::path path = a_studio();
    {
        SQLite::Database by_hand(path.string(), SQLite::OPEN_READWRITE);
        by_hand.exec("PRAGMA ignore_check_constraints = ON");
        by_hand.exec("UPDATE student SET level = 'expert' WHERE id = 1");
        by_hand.exec("UPDATE tuning_sheet SET on_date = '2026-02-30' WHERE id = 2");
    }
    const StudioFile file = StudioFile::open(path);
    EXPECT_THAT(invented::sentence_of<StudioDamaged>([&] { (void)file.students(); }),
                AllOf(HasSubstr(path.string()), HasSubstr("\"level\"")));
    EXPECT_THAT(invented::sentence_of<StudioDamaged>([&] { (void)file.sheet({2}); }),
                HasSubstr("\"on_date\""));
    EXPECT_TRUE(file.sheet({3}).has_value());
    EXPECT_THAT(file.check(), Not(IsEmpty()));
}

TEST_F(Opening, ANewerVersionIsLeftAlone) {
    const fs::path path = a_studio();
    {
        SQLite::Database newer(path.string(), SQLite::OPEN_READWRITE);
        newer.exec("PRAGMA user_version = 1000");
    }
    const std::string before = bytes_of(path);
    expect_refused<StudioNewer>(path, "install the newer program");
    expect_refused<StudioNewer>(path, "file version 1000", Access::read_only);
    EXPECT_TRUE(bytes_of(path) == before);
}

TEST_F(Opening, AFileLockedByAnotherProgramIsBusy) {
    const fs::path path = a_studio();
    SQLite::Database other(path.string(), SQLite::OPEN_READWRITE);
    other.exec("PRAGMA locking_mode = EXCLUSIVE");
    other.exec("BEGIN EXCLUSIVE");
    expect_refused<StudioBusy>(path, "Another program");
    other.exec("ROLLBACK");
}

TEST_F(Opening, AReadOnlyStudioTakesNoEdits) {
    const fs::path path = a_studio();
    const std::string before = bytes_of(path);
    {
        StudioFile file = StudioFile::open(path, Access::read_only);
        EXPECT_EQ(file.access(), Access::read_only);
        EXPECT_THAT(file.students(), SizeIs(60));
        EXPECT_THAT(invented::sentence_of<StudioReadOnly>(
                        [&] { file.edit("Add", [](Edit& edit) { edit.add(invented::plain_student()); }); }),
                    HasSubstr(path.string()));
        EXPECT_THROW(file.undo(), StudioReadOnly);
        file.copy_to(folder_ / "copy.lowledger");
        EXPECT_EQ(StudioFile::open(folder_ / "copy.lowledger").dump(), file.dump());
    }
    EXPECT_TRUE(bytes_of(path) == before);
}

TEST_F(Opening, AFileThatMayNotBeWrittenOpensForReadingWhenAsked) {
    const fs::path path = a_studio();
    fs::permissions(path, fs::perms::owner_read | fs::perms::group_read | fs::perms::others_read);
    EXPECT_EQ(Ended::well, as_a_plain_user([&] {
                  expect_refused<StudioReadOnly>(path, "open it for reading only");
                  EXPECT_THAT(StudioFile::open(path, Access::read_only).students(), SizeIs(60));
              }));
    EXPECT_THAT(folder_.names(), ElementsAre("a.lowledger"));
}

TEST_F(Opening, AFolderThatMayNotBeWrittenOpensForReadingWhenAsked) {
    const fs::path path = a_studio();
    const fs::path target = folder_ / "b.lowledger";
    fs::permissions(path, fs::perms::owner_read | fs::perms::others_read | fs::perms::others_write);
    fs::permissions(folder_.path(), fs::perms::owner_all | fs::perms::others_read | fs::perms::others_exec);
    fs::permissions(folder_.path(), fs::perms::owner_write, fs::perm_options::remove);
    EXPECT_EQ(Ended::well, as_a_plain_user([&] {
                  expect_refused<StudioReadOnly>(path, "copy it to a folder of yours");
                  const StudioFile file = StudioFile::open(path, Access::read_only);
                  EXPECT_THAT(file.students(), SizeIs(60));
                  EXPECT_THAT(invented::sentence_of([&] { file.copy_to(target); }),
                              HasSubstr(target.string()));
                  EXPECT_THAT(invented::sentence_of([&] { StudioFile::create(target, invented::facts()); }),
                              HasSubstr(target.string()));
              }));
    fs::permissions(folder_.path(), fs::perms::all);
}

TEST_F(Opening, InAFolderThatMayNotBeWrittenAStudioNotPutToRestIsReadOrExplained) {
    const fs::path path = a_studio();
    EXPECT_EQ(Ended::killed, in_a_child([&] {
                  StudioFile file = StudioFile::open(path);
                  file.edit("Add", [](Edit& edit) { edit.add(invented::plain_student()); });
                  die();
              }));
    const auto close_folder = [&] {
        for (const std::string& name : folder_.names())
            fs::permissions(folder_ / name, fs::perms::owner_read | fs::perms::others_read);
        fs::permissions(folder_.path(), fs::perms::owner_read | fs::perms::owner_exec |
                                            fs::perms::others_read | fs::perms::others_exec);
    };
    fs::remove(folder_ / "a.lowledger-shm");
    close_folder();
    EXPECT_EQ(Ended::well, as_a_plain_user([&] {
                  expect_refused<StudioReadOnly>(path, "in the middle of a change", Access::read_only);
              }));
    fs::permissions(folder_.path(), fs::perms::all);
    // As after copying the main file alone: what it holds is read.
    fs::remove(folder_ / "a.lowledger-wal");
    close_folder();
    EXPECT_EQ(Ended::well, as_a_plain_user([&] {
                  EXPECT_THAT(StudioFile::open(path, Access::read_only).students(), SizeIs(60));
              }));
    fs::permissions(folder_.path(), fs::perms::all);
}

TEST_F(Opening, MakingAStudioReplacesNothing) {
    write(folder_ / "taken", "mine");
    EXPECT_THAT(invented::sentence_of([&] { StudioFile::create(folder_ / "taken", invented::facts()); }),
                HasSubstr("There is something at " + (folder_ / "taken").string() + " already"));
    EXPECT_EQ(bytes_of(folder_ / "taken"), "mine");
    EXPECT_THAT(invented::sentence_of([&] { StudioFile::create(folder_ / "no" / "new", invented::facts()); }),
                HasSubstr("there is no folder"));
    studio::StudioFacts wrong = invented::facts();
    wrong.a4 = units::Hertz(44.0);
    EXPECT_THAT(invented::sentence_of([&] { StudioFile::create(folder_ / "new", wrong); }),
                HasSubstr("A4 lies between 380 and 500 Hz"));
    EXPECT_THAT(folder_.names(), ElementsAre("taken"));
}

TEST_F(Opening, AJournalLeftBehindIsNotPlayedIntoANewStudio) {
    const fs::path path = folder_ / "a.lowledger";
    for (const char* companion : {"-journal", "-wal", "-shm"}) {
        const fs::path left = fs::path(path) += companion;
        write(left, "edits of a studio that is gone");
        EXPECT_THAT(
            invented::sentence_of<units::Refusal>([&] { StudioFile::create(path, invented::facts()); }),
            HasSubstr(left.string() + " was left behind"));
        EXPECT_EQ(bytes_of(left), "edits of a studio that is gone");
        EXPECT_FALSE(fs::exists(path));
        fs::remove(left);
    }
}

TEST_F(Opening, ACopyReplacesNothing) {
    const fs::path path = a_studio();
    const StudioFile file = StudioFile::open(path);
    write(folder_ / "taken", "mine");
    EXPECT_THAT(invented::sentence_of([&] { file.copy_to(folder_ / "taken"); }), HasSubstr("already"));
    EXPECT_THAT(invented::sentence_of([&] { file.copy_to(path); }), HasSubstr("already"));
    EXPECT_EQ(bytes_of(folder_ / "taken"), "mine");
}

TEST_F(Opening, ACopyIsTheWholeStudioInOneFile) {
    const fs::path path = a_studio();
    StudioFile file = StudioFile::open(path);
    file.edit("Not yet in the main file", [](Edit& edit) { edit.add(invented::plain_student()); });
    const fs::path copy = folder_ / "copy, second.lowledger";
    file.copy_to(copy);
    EXPECT_EQ(bytes_of(copy).substr(18, 2), std::string("\1\1"));
    EXPECT_EQ(StudioFile::open(copy).dump(), file.dump());
    // It goes on by itself: ids are not used again there either.
    StudioFile second = StudioFile::open(copy);
    studio::StudentId id;
    second.edit("Add", [&](Edit& edit) { id = edit.add(invented::plain_student()); });
    EXPECT_EQ(id.number, 62);
    EXPECT_THAT(second.check(), IsEmpty());
}

/// Bytes 18 and 19 of the header: 1 for a rollback journal, 2 for a WAL (SQLite file format, section 1.3.3).
TEST_F(Opening, OpenItIsAWalAndAtRestOneFile) {
    const fs::path path = a_studio();
    EXPECT_THAT(folder_.names(), ElementsAre("a.lowledger"));
    EXPECT_EQ(bytes_of(path).substr(18, 2), std::string("\1\1"));
    {
        StudioFile first = StudioFile::open(path);
        std::optional<StudioFile> second = StudioFile::open(path);
        const StudioFile reader = StudioFile::open(path, Access::read_only);
        first.edit("Add", [](Edit& edit) { edit.add(invented::plain_student()); });
        EXPECT_THAT(folder_.names(), Contains("a.lowledger-wal"));
        second.reset();
        EXPECT_THAT(folder_.names(), Contains("a.lowledger-wal"));
        first.edit("Add", [](Edit& edit) { edit.add(invented::plain_student()); });
        { const StudioFile closed = std::move(first); }
        // The reader is the last to close and puts the file to rest.
        EXPECT_THAT(reader.students(), SizeIs(62));
    }
    EXPECT_THAT(folder_.names(), ElementsAre("a.lowledger"));
    EXPECT_EQ(bytes_of(path).substr(18, 2), std::string("\1\1"));
    EXPECT_THAT(StudioFile::open(path).students(), SizeIs(62));
}

TEST_F(Opening, WhereAWalIsRefusedTheJournalIsDeletedAfterEachEdit) {
    const fs::path path = a_studio();
    const unhappy::Disk disk([](int) { return unhappy::Answer::go_on; }, unhappy::SharedMemory::missing);
    StudioFile file = StudioFile::open(path);
    file.edit("Add", [](Edit& edit) { edit.add(invented::plain_student()); });
    EXPECT_THAT(folder_.names(), ElementsAre("a.lowledger"));
    EXPECT_EQ(bytes_of(path).substr(18, 2), std::string("\1\1"));
    EXPECT_THAT(file.students(), SizeIs(61));
    file.undo();
    EXPECT_THAT(file.students(), SizeIs(60));
}

TEST(FileSystems, RemoteOnesAreKnownByTheirType) {
    // Values of linux/magic.h and statfs(2).
    EXPECT_TRUE(remote_file_system(0x6969));       // NFS
    EXPECT_TRUE(remote_file_system(0xFF534D42));   // CIFS
    EXPECT_TRUE(remote_file_system(0xFE534D42));   // SMB2
    EXPECT_FALSE(remote_file_system(0xEF53));      // ext4
    EXPECT_FALSE(remote_file_system(0x01021994));  // tmpfs
    EXPECT_FALSE(remote_file_system(0x9123683E));  // btrfs
}

TEST_F(Opening, NamesWithOddCharactersWork) {
    for (const std::string name :
         {"a b.lowledger", "50% ?#&=.lowledger", "\u0141\u00f3d\u017a \u266d.lowledger",
          "it's; \"quoted\".lowledger", "file:x.lowledger", "no ending"}) {
        const fs::path path = a_studio(name);
        EXPECT_THAT(StudioFile::open(path).students(), SizeIs(60)) << name;
        EXPECT_THAT(StudioFile::open(path, Access::read_only).students(), SizeIs(60)) << name;
    }
    EXPECT_THAT(folder_.names(), SizeIs(6));
}

}  // namespace
}  // namespace lowledger::store
