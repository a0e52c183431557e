#include "reports/pages/file_names.h"

#include <gtest/gtest.h>

namespace lowledger::pages {
namespace {

TEST(FileNames, KeepLettersAndReplaceWhatFileSystemsRefuse) {
    EXPECT_EQ(safe_file_name("Zofia Wiśniowiecka-Mróz, T-1"), "Zofia Wiśniowiecka-Mróz, T-1");
    EXPECT_EQ(safe_file_name("a/b\\c:d*e?f\"g<h>i|j\nk"), "a-b-c-d-e-f-g-h-i-j-k");
    EXPECT_EQ(safe_file_name("../../etc/passwd"), "-..-etc-passwd");
    EXPECT_EQ(safe_file_name(" .hidden. "), "hidden");
    EXPECT_EQ(safe_file_name("..."), "handout");
    EXPECT_EQ(safe_file_name(""), "handout");
}

TEST(FileNames, AreCutBetweenCharacters) {
    std::string greek;
    for (int i = 0; i < 80; ++i)
        greek += "Π";
    const std::string name = safe_file_name("x" + greek);
    EXPECT_EQ(name.size(), 119U);
    EXPECT_EQ(name, "x" + greek.substr(0, 118));
}

TEST(FileNames, ASecondOneOfTheSameNameIsNumbered) {
    FileNames names;
    EXPECT_EQ(names.next("Ann, T-1"), "Ann, T-1");
    EXPECT_EQ(names.next("ann, T-1"), "ann, T-1 (2)");
    EXPECT_EQ(names.next("Ann, T:1"), "Ann, T-1 (3)");
}

}  // namespace
}  // namespace lowledger::pages
