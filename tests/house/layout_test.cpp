// What the repository promises about itself: its top level, its files' size, and that it keeps to its own
// words.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <set>
#include <string>

namespace {

namespace fs = std::filesystem;
const fs::path top = LOWLEDGER_SOURCE;

TEST(Layout, TopLevelIsExactlyWhatTheReadmeSays) {
    std::set<std::string> found;
    for (const auto& entry : fs::directory_iterator(top)) {
        const std::string name = entry.path().filename().string();
        if (!name.starts_with('.') && !name.starts_with("build")) found.insert(name);
    }
    const std::set<std::string> wanted = {"CMakeLists.txt", "DEVELOPERS.md", "README.md",   "app",  "docs",
                                          "model",          "reports",       "sample_data", "tests"};
    EXPECT_EQ(found, wanted);
}

TEST(Layout, NoSourceFileIsLongerThanFiveHundredLines) {
    for (const char* folder : {"app", "model", "reports", "tests"}) {
        for (const auto& entry : fs::recursive_directory_iterator(top / folder)) {
            const auto extension = entry.path().extension();
            if (extension != ".h" && extension != ".cpp" && extension != ".py") continue;
            std::ifstream in(entry.path());
            const auto lines = std::count(std::istreambuf_iterator<char>(in), {}, '\n');
            EXPECT_LE(lines, 500) << entry.path();
        }
    }
}

TEST(Layout, EveryFolderOfTheProgramIsInTheMap) {
    std::ifstream in(top / "docs/architecture.md");
    const std::string map{std::istreambuf_iterator<char>(in), {}};
    for (const char* folder : {"app", "model", "reports"}) {
        for (const auto& entry : fs::directory_iterator(top / folder)) {
            if (!entry.is_directory()) continue;
            const std::string name = std::string(folder) + "/" + entry.path().filename().string();
            EXPECT_NE(map.find("`" + name + "`"), std::string::npos) << name;
        }
    }
}

}  // namespace
