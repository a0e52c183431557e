#include "reports/pages/file_names.h"

#include <gtest/gtest.h>

#include "reports/canvas/paper.h"
#include "reports/pages/named.h"

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

canvas::Document of_pages(const std::string& title, std::size_t count) {
    canvas::Document document;
    document.title = title;
    document.author = "Nora Field";
    for (std::size_t i = 0; i < count; ++i)
        document.pages.push_back({canvas::size_of(canvas::Paper::a4), {}});
    document.bookmarks = {{title, 0}};
    return document;
}

TEST(TakenApart, GivesBackWhatWasJoined) {
    const std::vector<NamedDocument> documents{
        {"Ida", of_pages("Ida", 2)}, {"Ben", of_pages("Ben", 1)}, {"Ada", of_pages("Ada", 3)}};
    const auto parts = taken_apart(as_one(documents, "Summaries"));
    ASSERT_EQ(parts.size(), 3U);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        EXPECT_EQ(parts[i].name, documents[i].name);
        EXPECT_EQ(parts[i].document, documents[i].document);
    }
    EXPECT_EQ(taken_apart(of_pages("One", 4)).size(), 1U);
    EXPECT_EQ(taken_apart(canvas::Document()).size(), 1U);
}

}  // namespace
}  // namespace lowledger::pages
