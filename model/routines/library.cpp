#include "model/routines/library.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <set>
#include <toml++/toml.h>

#include "model/studio/file_words.h"
#include "model/units/refusal.h"

#include "routine_library_file.h"

namespace lowledger::routines {
namespace {

constexpr auto keys = std::to_array<std::string_view>(
    {"key", "title", "aim", "steps", "dose", "length_minutes", "levels", "horns", "music"});

/// One `[[routine]]` of a file.
class Entry {
  public:
    Entry(const toml::table& table, std::string_view file) : table_(table), file_(file) {
        for (const auto& [key, value] : table) {
            if (std::ranges::find(keys, key.str()) == keys.end())
                refuse(key.str(), fmt::format("is not known here; the keys are {}", fmt::join(keys, ", ")));
        }
    }

    [[noreturn]] void refuse(std::string_view key, std::string_view complaint) const {
        const toml::node* at = table_.get(key);
        throw units::Refusal(fmt::format("{}, line {}: '{}' of a routine {}.", file_,
                                         (at != nullptr ? at->source() : table_.source()).begin.line, key,
                                         complaint));
    }

    [[nodiscard]] std::string text(std::string_view key) const {
        const toml::node* node = table_.get(key);
        if (node == nullptr) return {};
        const auto value = node->value_exact<std::string>();
        if (!value) refuse(key, "must be a text in quotes");
        return *value;
    }

    [[nodiscard]] std::string needed(std::string_view key) const {
        std::string value = text(key);
        if (value.empty()) refuse(key, "is missing or empty");
        return value;
    }

    [[nodiscard]] std::vector<std::string> texts(std::string_view key) const {
        std::vector<std::string> values;
        const toml::node* node = table_.get(key);
        if (node == nullptr) return values;
        const toml::array* array = node->as_array();
        if (array == nullptr) refuse(key, "must be a list of texts");
        for (const toml::node& each : *array) {
            const auto value = each.value_exact<std::string>();
            if (!value || value->empty() || value->find('\n') != std::string::npos)
                refuse(key, "must be a list of texts of one line, none of them empty");
            values.push_back(*value);
        }
        return values;
    }

    [[nodiscard]] std::vector<studio::Level> levels() const {
        std::vector<studio::Level> levels;
        for (const std::string& word : texts("levels")) {
            const auto level = studio::parse_level(word);
            if (!level) refuse("levels", "may have beginner, middle and advanced");
            levels.push_back(*level);
        }
        return levels;
    }

    [[nodiscard]] std::optional<std::chrono::minutes> length() const {
        const toml::node* node = table_.get("length_minutes");
        if (node == nullptr) return std::nullopt;
        const auto value = node->value_exact<std::int64_t>();
        if (!value || *value < 1 || *value > 600)
            refuse("length_minutes", "must be a whole number from 1 to 600");
        return std::chrono::minutes(*value);
    }

  private:
    const toml::table& table_;
    std::string_view file_;
};

studio::Routine routine_in(const Entry& entry) {
    studio::Routine routine{.id = {}, .key = entry.needed("key"), .title = entry.needed("title")};
    routine.aim = entry.text("aim");
    routine.steps = entry.texts("steps");
    routine.dose = entry.text("dose");
    routine.length = entry.length();
    routine.levels = entry.levels();
    routine.horns = entry.texts("horns");
    routine.music = entry.text("music");
    return routine;
}

toml::table parsed(std::string_view text, std::string_view file) {
    try {
        return toml::parse(text, file);
    } catch (const toml::parse_error& error) {
        throw units::Refusal(
            fmt::format("{}, line {}: {}.", file, error.source().begin.line, error.description()));
    }
}

}  // namespace

std::vector<studio::Routine> read_routines(std::string_view toml_text, std::string_view file) {
    const toml::table root = parsed(toml_text, file);
    const toml::array* list = root["routine"].as_array();
    if (list == nullptr || root.size() != 1)
        throw units::Refusal(
            fmt::format("{}: it has routines, each under [[routine]], and nothing else.", file));
    std::vector<studio::Routine> routines;
    std::set<std::string> seen;
    for (const toml::node& node : *list) {
        const toml::table* table = node.as_table();
        if (table == nullptr)
            throw units::Refusal(fmt::format("{}, line {}: a routine is a table, under [[routine]].", file,
                                             node.source().begin.line));
        const Entry entry(*table, file);
        routines.push_back(routine_in(entry));
        if (!seen.insert(routines.back().key).second) entry.refuse("key", "is that of another routine, too");
    }
    return routines;
}

const std::vector<studio::Routine>& library() {
    static const std::vector<studio::Routine> routines = [] {
        const auto& file = routine_library_file().front();
        return read_routines(file.text, file.name);
    }();
    return routines;
}

}  // namespace lowledger::routines
