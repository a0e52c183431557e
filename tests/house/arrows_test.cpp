// Reads every #include of the program and holds it against arrows.txt.
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;
using Folders = std::set<std::string>;

struct Foreign {
    std::string start;
    Folders folders;
    bool hidden = false;
};

struct Rules {
    std::map<std::string, Folders> arrows;
    std::vector<Foreign> foreign;
};

Folders words(const std::string& text) {
    std::istringstream in(text);
    return {std::istream_iterator<std::string>(in), {}};
}

Rules read_rules(std::istream& in) {
    Rules rules;
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line.front() == '#') continue;
        if (const auto arrow = line.find(" ->"); arrow != std::string::npos) {
            rules.arrows[line.substr(0, arrow)] = words(line.substr(arrow + 3));
        } else {
            const auto colon = line.find(" : ");
            Foreign foreign{line.substr(0, colon), words(line.substr(colon + 3)), false};
            foreign.hidden = foreign.folders.erase("private") > 0;
            rules.foreign.push_back(foreign);
        }
    }
    return rules;
}

Rules project_rules() {
    std::ifstream in(fs::path(LOWLEDGER_SOURCE) / "tests/house/arrows.txt");
    return read_rules(in);
}

/// What a folder may include, itself and all that its arrows bring.
Folders reach(const Rules& rules, const std::string& folder) {
    Folders seen{folder};
    std::vector<std::string> open{folder};
    while (!open.empty()) {
        const std::string from = open.back();
        open.pop_back();
        const auto found = rules.arrows.find(from);
        if (found == rules.arrows.end()) continue;
        for (const auto& to : found->second) {
            if (seen.insert(to).second) open.push_back(to);
        }
    }
    return seen;
}

std::string folder_of(const std::string& path) {
    const auto first = path.find('/');
    return path.substr(0, path.find('/', first + 1));
}

/// The headers that a folder shows to others: those of HEADERS in its CMakeLists.txt.
Folders public_headers(const fs::path& top) {
    static const std::regex headers(R"re(HEADERS([^A-Z)]*))re");
    Folders out;
    for (const char* layer : {"model", "reports", "app"}) {
        for (const auto& entry : fs::directory_iterator(top / layer)) {
            std::ifstream in(entry.path() / "CMakeLists.txt");
            const std::string text{std::istreambuf_iterator<char>(in), {}};
            std::smatch found;
            if (!std::regex_search(text, found, headers)) continue;
            const std::string folder = std::string(layer) + "/" + entry.path().filename().string() + "/";
            for (const auto& name : words(found[1]))
                out.insert(folder + name);
        }
    }
    return out;
}

/// What is wrong with the includes of one file, a line each.
std::vector<std::string> violations(const Rules& rules, const Folders& shown, const std::string& file,
                                    const std::string& text) {
    static const std::regex include(R"re(^[ \t]*#[ \t]*include[ \t]*([<"])([^>"]+)[>"])re",
                                    std::regex::multiline);
    const std::string folder = folder_of(file);
    const Folders may = reach(rules, folder);
    std::vector<std::string> out;
    if (!rules.arrows.contains(folder))
        out.push_back(file + ": arrows.txt does not know the folder " + folder);
    for (std::sregex_iterator it(text.begin(), text.end(), include), end; it != end; ++it) {
        const std::string name = (*it)[2];
        if ((*it)[1] == "\"") {
            const bool ours = name.starts_with("model/") || name.starts_with("reports/") ||
                              name.starts_with("app/") || name.starts_with("tests/");
            if (!ours) continue;
            if (!may.contains(folder_of(name))) {
                out.push_back(file + ": may not see " + name);
            } else if (folder_of(name) != folder && !shown.contains(name)) {
                out.push_back(file + ": " + name + " is not among that folder's HEADERS");
            }
            continue;
        }
        for (const auto& foreign : rules.foreign) {
            if (!("<" + name).starts_with(foreign.start)) continue;
            if (!foreign.folders.contains(folder))
                out.push_back(file + ": <" + name + "> belongs to another folder");
            else if (foreign.hidden && shown.contains(file))
                out.push_back(file + ": <" + name + "> in a header that others see");
            break;
        }
    }
    return out;
}

TEST(Arrows, EveryIncludeFollowsTheDesign) {
    const Rules rules = project_rules();
    const Folders shown = public_headers(LOWLEDGER_SOURCE);
    int files = 0;
    for (const char* top : {"model", "reports", "app"}) {
        for (const auto& entry : fs::recursive_directory_iterator(fs::path(LOWLEDGER_SOURCE) / top)) {
            const auto extension = entry.path().extension();
            if (extension != ".h" && extension != ".cpp") continue;
            std::ifstream in(entry.path());
            const std::string text{std::istreambuf_iterator<char>(in), {}};
            const std::string name = fs::relative(entry.path(), LOWLEDGER_SOURCE).generic_string();
            for (const auto& line : violations(rules, shown, name, text))
                ADD_FAILURE() << line;
            ++files;
        }
    }
    EXPECT_GT(files, 20);
}

TEST(Arrows, HaveNoCycle) {
    const Rules rules = project_rules();
    for (const auto& [folder, targets] : rules.arrows) {
        for (const auto& target : targets) {
            EXPECT_FALSE(reach(rules, target).contains(folder)) << folder << " -> " << target;
            EXPECT_TRUE(rules.arrows.contains(target)) << target;
        }
    }
}

TEST(Arrows, ForbiddenIncludesAreFound) {
    const Rules rules = project_rules();
    const Folders shown = {"model/units/pitch.h", "model/store/a.h"};
    const auto count = [&](const char* file, const char* text) {
        return violations(rules, shown, file, text).size();
    };
    EXPECT_EQ(count("model/units/a.cpp", "#include \"model/horns/kind.h\"\n"), 1U);
    EXPECT_EQ(count("reports/pages/a.cpp", "#include \"model/store/studio_file.h\"\n"), 1U);
    EXPECT_EQ(count("app/desk/a.cpp", " # include <wx/frame.h>\n"), 1U);
    EXPECT_EQ(count("model/store/a.h", "#include <SQLiteCpp/Database.h>\n"), 1U);
    EXPECT_EQ(count("model/cellar/a.h", ""), 1U);
    EXPECT_EQ(count("model/tuning/a.cpp", "#include \"model/units/hidden.h\"\n"), 1U);
    EXPECT_EQ(count("model/units/a.cpp", "#include \"model/units/hidden.h\"\n"), 0U);
    EXPECT_EQ(count("model/store/hidden.h", "#include <SQLiteCpp/Database.h>\n"), 0U);
    EXPECT_EQ(count("model/tuning/a.h", "#include \"model/units/pitch.h\"\n#include <vector>\n"), 0U);
}

}  // namespace
