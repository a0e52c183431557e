#include "app/batch/sample_table.h"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>

#include "model/units/refusal.h"

namespace lowledger::batch {

SampleTable::SampleTable(const toml::table& table, std::string_view file,
                         std::initializer_list<std::string_view> allowed)
    : table_(table), file_(file) {
    for (const auto& [key, node] : table)
        if (std::find(allowed.begin(), allowed.end(), key.str()) == allowed.end())
            refuse(key.str(), fmt::format("is no key there. Known are: {}.", fmt::join(allowed, ", ")));
}

void SampleTable::refuse(std::string_view key, std::string_view complaint) const {
    const toml::node* node = table_.get(key);
    const auto line = (node != nullptr ? node->source() : table_.source()).begin.line;
    throw units::Refusal(fmt::format("{}, line {}: {} {}", file_, line, key, complaint));
}

int SampleTable::week(std::string_view key) const {
    const auto value = require<std::int64_t>(key);
    if (value < -520 || value > 52) refuse(key, "is no week from -520 to 52.");
    return static_cast<int>(value);
}

std::optional<int> SampleTable::week_if(std::string_view key) const {
    if (table_.get(key) == nullptr) return std::nullopt;
    return week(key);
}

int SampleTable::weekday(std::string_view key) const {
    return 1 + static_cast<int>(
                   word(key, {"Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"},
                        "Monday"));
}

studio::TimeOfDay SampleTable::time(std::string_view key) const {
    const auto text = require<std::string>(key);
    const auto time = studio::TimeOfDay::parse(text);
    if (!time) refuse(key, "is no time of the day such as 16:05.");
    return *time;
}

std::size_t SampleTable::word(std::string_view key, std::initializer_list<std::string_view> words,
                              std::string_view otherwise) const {
    const auto text = get<std::string>(key).value_or(std::string(otherwise));
    const auto* const found = std::find(words.begin(), words.end(), text);
    if (found == words.end()) refuse(key, fmt::format("is none of {}.", fmt::join(words, ", ")));
    return static_cast<std::size_t>(found - words.begin());
}

const toml::array* SampleTable::array(std::string_view key) const {
    const toml::node* node = table_.get(key);
    if (node == nullptr) return nullptr;
    if (!node->is_array()) refuse(key, "is no list.");
    return node->as_array();
}

std::vector<double> SampleTable::numbers(std::string_view key) const {
    std::vector<double> out;
    if (const toml::array* list = array(key))
        for (const toml::node& item : *list) {
            const auto number = item.value<double>();
            if (!number) refuse(key, "is no list of numbers.");
            out.push_back(*number);
        }
    return out;
}

std::vector<std::string> SampleTable::texts(std::string_view key) const {
    std::vector<std::string> out;
    if (const toml::array* list = array(key))
        for (const toml::node& item : *list) {
            auto text = item.value<std::string>();
            if (!text) refuse(key, "is no list of texts.");
            out.push_back(std::move(*text));
        }
    return out;
}

std::vector<const toml::table*> SampleTable::tables(std::string_view key) const {
    std::vector<const toml::table*> out;
    if (const toml::array* list = array(key))
        for (const toml::node& item : *list) {
            if (!item.is_table()) refuse(key, "is no list of tables.");
            out.push_back(item.as_table());
        }
    return out;
}

const toml::table* SampleTable::table(std::string_view key) const {
    const toml::node* node = table_.get(key);
    if (node == nullptr) return nullptr;
    if (!node->is_table()) refuse(key, "is no table.");
    return node->as_table();
}

}  // namespace lowledger::batch
