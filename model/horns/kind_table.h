#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <toml++/toml.h>
#include <vector>

#include "model/horns/fingering.h"
#include "model/units/pitch.h"

namespace lowledger::horns {

/// A table of a kind's file with its keys checked. Every error is a Refusal that names file, line and key and
/// says what is allowed.
class KindTable {
  public:
    /// Throws for a key that is not in `allowed`.
    KindTable(const toml::table& table, std::string_view file, std::string_view title,
              std::initializer_list<std::string_view> allowed);

    [[nodiscard]] bool has(std::string_view key) const { return table_.contains(key); }
    [[nodiscard]] std::string text(std::string_view key) const;
    [[nodiscard]] std::string text_or(std::string_view key, std::string_view otherwise) const;
    [[nodiscard]] bool flag_or(std::string_view key, bool otherwise) const;
    /// A finite number from `low` to `high`.
    [[nodiscard]] double number(std::string_view key, double low, double high) const;
    [[nodiscard]] double number_or(std::string_view key, double low, double high, double otherwise) const;
    /// A whole number from `low` to `high`.
    [[nodiscard]] int integer(std::string_view key, int low, int high) const;
    [[nodiscard]] units::Pitch pitch(std::string_view key) const;
    [[nodiscard]] std::vector<std::string> texts_or_none(std::string_view key) const;
    /// The tables of `[[key]]`; empty if there is none.
    [[nodiscard]] std::vector<const toml::table*> tables(std::string_view key) const;
    /// The table of `[key]`; null if there is none.
    [[nodiscard]] const toml::table* table_or_null(std::string_view key) const;

    /// Throws "FILE, line N: KEY ..." with `complaint` for the end of the sentence.
    [[noreturn]] void refuse(std::string_view key, std::string_view complaint) const;

  private:
    const toml::node& node(std::string_view key) const;

    const toml::table& table_;
    std::string file_;
    std::string title_;
};

}  // namespace lowledger::horns
