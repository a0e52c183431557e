#include "reports/canvas/whole_file.h"

#include <csignal>
#include <gmock/gmock.h>
#include <sys/resource.h>

#include "model/units/refusal.h"
#include "tests/reports/canvas/outside.h"

namespace lowledger::canvas {
namespace {

using test::contents;
using test::TemporaryFolder;
using testing::AllOf;
using testing::HasSubstr;

std::string refusal_of(const std::filesystem::path& path, std::string_view bytes) {
    try {
        write_file_whole(path, bytes);
    } catch (const units::Refusal& refusal) {
        return refusal.what();
    }
    return "written";
}

/// Files may grow to so many bytes only, while this lives.
class FileSizeLimit {
  public:
    explicit FileSizeLimit(rlim_t bytes) : handler_(std::signal(SIGXFSZ, SIG_IGN)) {
        ::getrlimit(RLIMIT_FSIZE, &before_);
        rlimit now = before_;
        now.rlim_cur = bytes;
        ::setrlimit(RLIMIT_FSIZE, &now);
    }
    ~FileSizeLimit() {
        ::setrlimit(RLIMIT_FSIZE, &before_);
        std::signal(SIGXFSZ, handler_);
    }
    FileSizeLimit(const FileSizeLimit&) = delete;
    FileSizeLimit& operator=(const FileSizeLimit&) = delete;

  private:
    void (*handler_)(int);
    rlimit before_{};
};

TEST(WholeFile, IsWrittenAndReplaced) {
    const TemporaryFolder folder;
    write_file_whole(folder / "handout.pdf", "first");
    write_file_whole(folder / "handout.pdf", "second");
    EXPECT_EQ(contents(folder / "handout.pdf"), "second");
    EXPECT_EQ(folder.count(), 1U);
}

TEST(WholeFile, TakesALongNameAndAnyLetters) {
    const TemporaryFolder folder;
    const std::string name = std::string(240, 'n') + "\u017B.pdf";
    write_file_whole(folder / name, "page");
    EXPECT_EQ(contents(folder / name), "page");
}

TEST(WholeFile, KeepsTheModeOfTheFileBefore) {
    using std::filesystem::perms;
    const TemporaryFolder folder;
    write_file_whole(folder / "a", "1");
    std::filesystem::permissions(folder / "a", perms::owner_read | perms::owner_write);
    write_file_whole(folder / "a", "2");
    EXPECT_EQ(std::filesystem::status(folder / "a").permissions(), perms::owner_read | perms::owner_write);
}

TEST(WholeFile, FollowsASymbolicLink) {
    const TemporaryFolder folder;
    write_file_whole(folder / "real", "1");
    std::filesystem::create_symlink("real", folder / "link");
    write_file_whole(folder / "link", "2");
    EXPECT_TRUE(std::filesystem::is_symlink(folder / "link"));
    EXPECT_EQ(contents(folder / "real"), "2");
}

TEST(WholeFile, TooLargeForItsPlaceLeavesWhatWasThere) {
    const TemporaryFolder folder;
    write_file_whole(folder / "handout.pdf", "before");
    std::string said;
    {
        const FileSizeLimit limit(1000);
        said = refusal_of(folder / "handout.pdf", std::string(5000, 'x'));
    }
    EXPECT_THAT(said, AllOf(HasSubstr((folder / "handout.pdf").string()), HasSubstr("another folder")));
    EXPECT_EQ(contents(folder / "handout.pdf"), "before");
    EXPECT_EQ(folder.count(), 1U);
}

TEST(WholeFile, SaysThatTheDiskIsFull) {
    // The device that is always full, on Linux.
    EXPECT_THAT(refusal_of("/dev/full", "page"), AllOf(HasSubstr("/dev/full"), HasSubstr("disk is full")));
}

TEST(WholeFile, NamesAMissingFolder) {
    const TemporaryFolder folder;
    EXPECT_THAT(refusal_of(folder / "none" / "handout.pdf", "page"),
                AllOf(HasSubstr("none/handout.pdf"), HasSubstr("folder does not exist")));
    EXPECT_EQ(folder.count(), 0U);
}

TEST(WholeFile, RefusesAFolderAndAPathThroughAFile) {
    const TemporaryFolder folder;
    write_file_whole(folder / "file", "1");
    EXPECT_THAT(refusal_of(folder.path(), "page"), HasSubstr("folder of that name"));
    EXPECT_THAT(refusal_of(folder / "file" / "handout.pdf", "page"), HasSubstr("not a folder"));
    EXPECT_EQ(contents(folder / "file"), "1");
}

TEST(WholeFile, RefusesAProtectedPlace) {
    if (::geteuid() == 0) {
        // To the system's administrator only a place that takes no files at all is closed.
        EXPECT_THAT(refusal_of("/proc/handout.pdf", "page"), HasSubstr("/proc/handout.pdf was not written"));
        return;
    }
    using std::filesystem::perms;
    const TemporaryFolder folder;
    write_file_whole(folder / "file", "1");
    std::filesystem::permissions(folder / "file", perms::owner_read);
    EXPECT_THAT(refusal_of(folder / "file", "2"), HasSubstr("may not write there"));
    std::filesystem::permissions(folder.path(), perms::owner_read | perms::owner_exec);
    EXPECT_THAT(refusal_of(folder / "new", "2"), HasSubstr("may not write there"));
    EXPECT_EQ(contents(folder / "file"), "1");
}

}  // namespace
}  // namespace lowledger::canvas
