#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <toml++/toml.h>
#include <vector>

#include "model/horns/kind.h"
#include "reports/words/words.h"

namespace lowledger::words {
namespace {

/// Every file of sentences, whether or not the program embeds it.
std::vector<std::filesystem::path> texts_files() {
    const std::filesystem::path folder = LOWLEDGER_SOURCE "/reports/words";
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
        if (entry.path().extension() == ".toml") files.push_back(entry.path());
    return files;
}

template <typename Check>
void for_each_sentence(Check check) {
    const Words words;
    for (std::size_t i = 0; i < sentence_ids.size(); ++i) {
        SCOPED_TRACE(std::string(sentence_ids[i]));
        check(std::string(sentence_ids[i]), words.text(static_cast<Sentence>(i)));
    }
}

TEST(Sentences, EveryTextHasItsConstantAndEveryConstantItsText) {
    std::set<std::string> in_file;
    for (const auto& file : texts_files()) {
        for (const auto& [key, value] : toml::parse_file(file.string())) {
            EXPECT_TRUE(value.is_string()) << key.str();
            EXPECT_TRUE(in_file.emplace(key.str()).second) << key.str() << " stands twice";
        }
    }
    const std::set<std::string> constants(sentence_ids.begin(), sentence_ids.end());
    EXPECT_EQ(in_file, constants);
    EXPECT_EQ(constants.size(), sentence_ids.size());
}

/// Ids named as Sentence::id in the program's sources, and those that kinds name as their cautions.
std::set<std::string> ids_in_use() {
    std::set<std::string> used;
    for (const auto& kind : horns::built_in_kinds())
        used.insert(kind.cautions.begin(), kind.cautions.end());
    const std::regex named("Sentence::([a-z0-9_]+)");
    for (const auto* const folder : {LOWLEDGER_SOURCE "/app", LOWLEDGER_SOURCE "/reports"}) {
        for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
            if (entry.path().extension() != ".cpp" && entry.path().extension() != ".h") continue;
            std::ostringstream text;
            text << std::ifstream(entry.path()).rdbuf();
            const std::string source = text.str();
            for (std::sregex_iterator at(source.begin(), source.end(), named), end; at != end; ++at)
                used.insert((*at)[1]);
        }
    }
    return used;
}

TEST(Sentences, EveryOneIsSaidSomewhere) {
    const auto used = ids_in_use();
    const std::regex numbered("(.*_)[2-9]");
    for (const std::string_view sentence : sentence_ids) {
        const std::string id(sentence);
        std::smatch parts;
        // A numbered row is reached from its first.
        const bool in_row = std::regex_match(id, parts, numbered) && used.contains(parts[1].str() + "1");
        EXPECT_TRUE(in_row || used.contains(id)) << id;
    }
}

TEST(Sentences, NoneIsEmptyOrPadded) {
    for_each_sentence([](const std::string&, const std::string& text) {
        ASSERT_FALSE(text.empty());
        EXPECT_NE(text.front(), ' ');
        EXPECT_NE(text.back(), ' ');
        EXPECT_EQ(text.find("  "), std::string::npos);
    });
}

TEST(Sentences, OneAndManyComeInPairsWithACount) {
    const std::set<std::string> ids(sentence_ids.begin(), sentence_ids.end());
    for_each_sentence([&](const std::string& id, const std::string& text) {
        for (const auto& [mine, other] : {std::pair{"_one", "_many"}, std::pair{"_many", "_one"}}) {
            if (!id.ends_with(mine)) continue;
            EXPECT_TRUE(ids.contains(id.substr(0, id.size() - std::string(mine).size()) + other));
            EXPECT_TRUE(places_of(text).contains("count"));
        }
    });
}

TEST(Sentences, APairHasTheSamePlaces) {
    for_each_sentence([](const std::string& id, const std::string& text) {
        if (!id.ends_with("_one")) return;
        const auto many =
            std::find(sentence_ids.begin(), sentence_ids.end(), id.substr(0, id.size() - 3) + "many");
        ASSERT_NE(many, sentence_ids.end());
        const Words words;
        EXPECT_EQ(places_of(text), places_of(words.text(static_cast<Sentence>(many - sentence_ids.begin()))));
    });
}

/// What a twelve-year-old would not know, or what would blame; whole words, in lower case.
TEST(Sentences, NothingIsJargonOrBlames) {
    const std::array forbidden = {"wrong",     "error",   "mistake", "fail",      "failed",
                                  "bad",       "fault",   "adjust",  "deviation", "offset",
                                  "parameter", "optimal", "optimum", "hz",        "intonation"};
    for_each_sentence([&](const std::string&, const std::string& text) {
        std::string word;
        for (const char c : text + ".") {
            if (std::isalpha(static_cast<unsigned char>(c)) != 0) {
                word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
                continue;
            }
            EXPECT_EQ(std::find(forbidden.begin(), forbidden.end(), word), forbidden.end()) << word;
            word.clear();
        }
    });
}

}  // namespace
}  // namespace lowledger::words
