#include "model/horns/kind_table.h"

#include <algorithm>
#include <cstdint>
#include <fmt/format.h>
#include <fmt/ranges.h>

#include "model/units/refusal.h"

namespace lowledger::horns {

KindTable::KindTable(const toml::table& table, std::string_view file, std::string_view title,
                     std::initializer_list<std::string_view> allowed)
    : table_(table), file_(file), title_(title) {
    for (const auto& [key, value] : table) {
        if (std::ranges::find(allowed, key.str()) == allowed.end()) {
            refuse(key.str(), fmt::format("is not known here; the keys are {}.", fmt::join(allowed, ", ")));
        }
    }
}

void KindTable::refuse(std::string_view key, std::string_view complaint) const {
    const toml::node* at = table_.get(key);
    const auto line = (at != nullptr ? at->source() : table_.source()).begin.line;
    throw units::Refusal(fmt::format("{}, line {}: '{}' of {} {}", file_, line, key, title_, complaint));
}

const toml::node& KindTable::node(std::string_view key) const {
    const toml::node* found = table_.get(key);
    if (found == nullptr) refuse(key, "is missing.");
    return *found;
}

std::string KindTable::text(std::string_view key) const {
    const auto value = node(key).value_exact<std::string>();
    if (!value || value->empty()) refuse(key, "must be a text in quotes that is not empty.");
    return *value;
}

std::string KindTable::text_or(std::string_view key, std::string_view otherwise) const {
    return has(key) ? text(key) : std::string(otherwise);
}

bool KindTable::flag_or(std::string_view key, bool otherwise) const {
    if (!has(key)) return otherwise;
    const auto value = node(key).value_exact<bool>();
    if (!value) refuse(key, "must be true or false.");
    return *value;
}

double KindTable::number(std::string_view key, double low, double high) const {
    const toml::node& found = node(key);
    const auto value = found.is_number() ? found.value<double>() : std::nullopt;
    if (!value || !(*value >= low && *value <= high)) {
        refuse(key, fmt::format("must be a number from {} to {}.", low, high));
    }
    return *value;
}

double KindTable::number_or(std::string_view key, double low, double high, double otherwise) const {
    return has(key) ? number(key, low, high) : otherwise;
}

int KindTable::integer(std::string_view key, int low, int high) const {
    const auto value = node(key).value_exact<std::int64_t>();
    if (!value || *value < low || *value > high) {
        refuse(key, fmt::format("must be a whole number from {} to {}.", low, high));
    }
    return static_cast<int>(*value);
}

units::Pitch KindTable::pitch(std::string_view key) const {
    const auto value = units::parse_pitch(text(key));
    if (!value) refuse(key, "must be a sounding note such as \"Bb1\".");
    return *value;
}

std::vector<std::string> KindTable::texts_or_none(std::string_view key) const {
    std::vector<std::string> out;
    if (!has(key)) return out;
    const toml::array* array = node(key).as_array();
    if (array == nullptr) refuse(key, "must be a list of texts in brackets.");
    for (const toml::node& entry : *array) {
        const auto value = entry.value_exact<std::string>();
        if (!value || value->empty()) refuse(key, "must hold texts in quotes only.");
        out.push_back(*value);
    }
    return out;
}

std::vector<const toml::table*> KindTable::tables(std::string_view key) const {
    std::vector<const toml::table*> out;
    if (!has(key)) return out;
    const toml::array* array = node(key).as_array();
    if (array == nullptr) refuse(key, fmt::format("must be a list of tables, each begun with [[{}]].", key));
    for (const toml::node& entry : *array) {
        const toml::table* table = entry.as_table();
        if (table == nullptr) refuse(key, fmt::format("must hold tables only, each begun with [[{}]].", key));
        out.push_back(table);
    }
    return out;
}

const toml::table* KindTable::table_or_null(std::string_view key) const {
    if (!has(key)) return nullptr;
    const toml::table* table = node(key).as_table();
    if (table == nullptr) refuse(key, fmt::format("must be a table, begun with [{}].", key));
    return table;
}

}  // namespace lowledger::horns
