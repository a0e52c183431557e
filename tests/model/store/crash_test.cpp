// The program ends in the middle of an edit, or the disk fails in one: what was filed before stays, what was
// not filed leaves no trace, and the file is sound.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/resource.h>

#include "tests/model/store/child.h"
#include "tests/model/store/invented.h"
#include "tests/model/store/invented_book.h"
#include "tests/model/store/unhappy_disk.h"

namespace lowledger::store {
namespace {

using testing::AnyOf;
using testing::ElementsAre;
using testing::Eq;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using unhappy::Answer;
using unhappy::SharedMemory;

/// An edit over all tables of records and several pages.
void large_edit(StudioFile& file) {
    file.edit("Add a class", [&](Edit& edit) {
        // Two terms of the same days cannot be.
        for (const studio::Term& term : file.terms())
            edit.remove(term.id);
        for (int i = 0; i < 2; ++i) {
            studio::Student student = invented::full_student();
            student.remarks.append(1500, 'r');
            const auto id = edit.add(student);
            const auto horn = edit.add(invented::full_horn(id));
            edit.add(invented::full_sheet(id, horn));
        }
        invented::add_book(edit);
    });
}

class Crash : public testing::Test {
  protected:
    Crash() {
        {
            StudioFile file = StudioFile::create(path_, invented::facts());
            file.edit("Add", [](Edit& edit) { edit.add(invented::full_student()); });
            before_ = file.dump();
        }
        std::filesystem::copy_file(path_, start_);
    }

    /// A whole new file with the same records as at the start.
    void start_again() {
        for (const std::string& name : folder_.names())
            std::filesystem::remove(folder_ / name);
        std::filesystem::copy_file(start_, path_);
    }

    void expect_sound_and_in_use(const std::string& dump) {
        StudioFile file = StudioFile::open(path_);
        EXPECT_EQ(file.dump(), dump);
        EXPECT_THAT(file.check(), IsEmpty());
        file.edit("Add after", [](Edit& edit) { edit.add(invented::plain_student()); });
        file.undo();
        EXPECT_EQ(file.dump(), dump);
    }

    invented::Folder folder_;
    std::filesystem::path path_ = folder_ / "crash.lowledger";
    invented::Folder elsewhere_;
    std::filesystem::path start_ = elsewhere_ / "start.lowledger";
    std::string before_;
};

TEST_F(Crash, KilledAfterTheStatementsOfAnEdit) {
    EXPECT_EQ(Ended::killed, in_a_child([&] {
                  StudioFile file = StudioFile::open(path_);
                  file.edit("Unfinished", [](Edit& edit) {
                      edit.add(invented::plain_horn());
                      edit.add(invented::plain_student());
                      die();
                  });
              }));
    expect_sound_and_in_use(before_);
    EXPECT_THAT(folder_.names(), ElementsAre("crash.lowledger"));
}

TEST_F(Crash, KilledBetweenCommitAndClose) {
    const std::filesystem::path told = folder_ / "told";
    EXPECT_EQ(Ended::killed, in_a_child([&] {
                  StudioFile file = StudioFile::open(path_);
                  large_edit(file);
                  std::FILE* out = std::fopen(told.c_str(), "w");
                  std::fputs(file.dump().c_str(), out);
                  std::fclose(out);
                  die();
              }));
    std::string after;
    {
        StudioFile file = StudioFile::open(path_);
        after = file.dump();
    }
    EXPECT_NE(after, before_);
    EXPECT_EQ(after.size(), std::filesystem::file_size(told));
    expect_sound_and_in_use(after);
}

TEST_F(Crash, AReaderOpensWhatAKilledProgramLeft) {
    EXPECT_EQ(Ended::killed, in_a_child([&] {
                  StudioFile file = StudioFile::open(path_);
                  large_edit(file);
                  die();
              }));
    EXPECT_NE(StudioFile::open(path_, Access::read_only).dump(), before_);
    EXPECT_THAT(folder_.names(), ElementsAre("crash.lowledger"));
}

/// With a WAL, and where that is refused.
class EachWrite : public Crash, public testing::WithParamInterface<SharedMemory> {
  protected:
    void lose_nothing(Answer answer);
};

void EachWrite::lose_nothing(Answer answer) {
    int refusals = 0;
    int undone_by_the_disk = 0;
    for (int nth = 1;; ++nth) {
        start_again();
        unhappy::Disk disk([](int) { return Answer::go_on; }, GetParam());
        {
            StudioFile file = StudioFile::open(path_);
            disk.ask([&](int write) { return write >= nth ? answer : Answer::go_on; });
            const std::string sentence = invented::sentence_of([&] { large_edit(file); });
            const bool filed = sentence.empty();
            const bool asked_enough = disk.writes() >= nth;
            disk.ask([](int) { return Answer::go_on; });
            if (!filed) {
                ++refusals;
                ASSERT_THAT(sentence, HasSubstr("was not filed in " + path_.string()));
                ASSERT_THAT(sentence, HasSubstr("free some space"));
                ASSERT_EQ(file.dump(), before_) << "failed at write " << nth;
                ASSERT_EQ(file.undo_name(), std::nullopt);
            }
            // Space is back: the same edit goes in.
            const std::string now = file.dump();
            large_edit(file);
            ASSERT_EQ(file.undo_name(), "Add a class");
            file.undo();
            ASSERT_EQ(file.dump(), now);
            if (!asked_enough) break;
        }
        undone_by_the_disk += 1;
        ASSERT_THAT(StudioFile::open(path_).check(), IsEmpty());
    }
    EXPECT_GT(refusals, 10);
    EXPECT_GE(undone_by_the_disk, refusals);
}

INSTANTIATE_TEST_SUITE_P(Journals, EachWrite, testing::Values(SharedMemory::there, SharedMemory::missing));

TEST_P(EachWrite, KilledBeforeIt) {
    std::string after;
    {
        StudioFile file = StudioFile::open(path_);
        large_edit(file);
        after = file.dump();
    }
    int kills = 0;
    bool reached_the_end = false;
    for (int nth = 1; !reached_the_end; ++nth) {
        start_again();
        const Ended end = in_a_child([&] {
            const unhappy::Disk disk(
                [&](int write) {
                    if (write == nth) die();
                    return Answer::go_on;
                },
                GetParam());
            StudioFile file = StudioFile::open(path_);
            large_edit(file);
        });
        reached_the_end = end == Ended::well;
        ASSERT_NE(end, Ended::otherwise);
        kills += reached_the_end ? 0 : 1;
        StudioFile file = StudioFile::open(path_);
        ASSERT_THAT(file.dump(), AnyOf(Eq(before_), Eq(after))) << "killed before write " << nth;
        ASSERT_THAT(file.check(), IsEmpty()) << "killed before write " << nth;
    }
    EXPECT_GT(kills, 20);
}

TEST_P(EachWrite, RefusedByAFullDisk) {
    lose_nothing(Answer::disk_full);
}

TEST_P(EachWrite, RefusedByAFailingDisk) {
    lose_nothing(Answer::disk_failed);
}

TEST_F(Crash, ADiskThatIsFullAtClosingKeepsTheEditForTheNextOpening) {
    std::string after;
    {
        unhappy::Disk disk([](int) { return Answer::go_on; });
        StudioFile file = StudioFile::open(path_);
        large_edit(file);
        after = file.dump();
        disk.ask([](int) { return Answer::disk_full; });
        StudioFile closing = std::move(file);
    }
    EXPECT_THAT(folder_.names(), testing::Contains("crash.lowledger-wal"));
    expect_sound_and_in_use(after);
    EXPECT_THAT(folder_.names(), ElementsAre("crash.lowledger"));
}

TEST_F(Crash, AFullDiskWhileCopyingLeavesNoHalfCopy) {
    unhappy::Disk disk([](int) { return Answer::go_on; });
    {
        StudioFile file = StudioFile::open(path_);
        large_edit(file);
        for (int nth = 1; nth < 6; ++nth) {
            disk.ask([&](int write) { return write >= nth ? Answer::disk_full : Answer::go_on; });
            const std::string sentence =
                invented::sentence_of([&] { file.copy_to(folder_ / "copy.lowledger"); });
            EXPECT_THAT(sentence, HasSubstr("no copy of " + path_.string() + " was made"));
            EXPECT_THAT(folder_.names(), Not(testing::Contains(HasSubstr("copy"))));
        }
        disk.ask([](int) { return Answer::go_on; });
        file.copy_to(folder_ / "copy.lowledger");
        EXPECT_EQ(StudioFile::open(folder_ / "copy.lowledger").dump(), file.dump());
    }
}

TEST_F(Crash, AFullDiskWhileMakingAStudioLeavesNoHalfStudio) {
    unhappy::Disk disk([](int write) { return write >= 4 ? Answer::disk_full : Answer::go_on; });
    const std::string sentence =
        invented::sentence_of([&] { StudioFile::create(folder_ / "new.lowledger", invented::facts()); });
    EXPECT_THAT(sentence, HasSubstr("The disk is full, so the studio"));
    EXPECT_THAT(folder_.names(), ElementsAre("crash.lowledger"));
}

/// The kernel refuses to let any file grow: a real failed write(2), in the WAL and in the main file.
class FileLimit : public Crash, public testing::WithParamInterface<SharedMemory> {};

TEST_P(FileLimit, AnEditBeyondItIsRefusedAndLaterOnesWork) {
    const Ended end = in_a_child([&] {
        ::signal(SIGXFSZ, SIG_IGN);
        const unhappy::Disk disk([](int) { return Answer::go_on; }, GetParam());
        StudioFile file = StudioFile::open(path_);
        rlimit limit{};
        ::getrlimit(RLIMIT_FSIZE, &limit);
        const rlimit no_growth{std::filesystem::file_size(path_), limit.rlim_max};
        ::setrlimit(RLIMIT_FSIZE, &no_growth);
        const std::string sentence = invented::sentence_of([&] {
            for (int i = 0; i < 40; ++i)
                large_edit(file);
        });
        ::setrlimit(RLIMIT_FSIZE, &limit);
        EXPECT_THAT(sentence, HasSubstr("was not filed in " + path_.string()));
        EXPECT_THAT(file.check(), IsEmpty());
        const std::string now = file.dump();
        large_edit(file);
        file.undo();
        EXPECT_EQ(file.dump(), now);
    });
    EXPECT_EQ(end, Ended::well);
    EXPECT_THAT(StudioFile::open(path_).check(), IsEmpty());
}

INSTANTIATE_TEST_SUITE_P(Journals, FileLimit, testing::Values(SharedMemory::there, SharedMemory::missing));

}  // namespace
}  // namespace lowledger::store
