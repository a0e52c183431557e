#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <toml++/toml.h>
#include <vector>

#include "model/studio/time_of_day.h"

namespace lowledger::batch {

/// A table of the sample's sources with its keys checked; every complaint is a Refusal naming file, line,
/// key.
class SampleTable {
  public:
    SampleTable(const toml::table& table, std::string_view file,
                std::initializer_list<std::string_view> allowed);

    [[noreturn]] void refuse(std::string_view key, std::string_view complaint) const;

    /// `T` is what TOML has: std::string, bool, std::int64_t, double (whole numbers too).
    template <typename T>
    [[nodiscard]] std::optional<T> get(std::string_view key) const {
        const toml::node* node = table_.get(key);
        if (node == nullptr) return std::nullopt;
        if (auto value = node->value<T>()) return value;
        refuse(key, "is a value of another kind than expected.");
    }
    template <typename T>
    [[nodiscard]] T require(std::string_view key) const {
        if (auto value = get<T>(key)) return *value;
        refuse(key, "is missing.");
    }
    /// Counted from the week the sample is made for: -520 to 52.
    [[nodiscard]] int week(std::string_view key) const;
    /// The index of the text in `words`; throws for another word, naming them.
    [[nodiscard]] std::size_t word(std::string_view key, std::initializer_list<std::string_view> words,
                                   std::string_view otherwise) const;
    [[nodiscard]] std::vector<double> numbers(std::string_view key) const;
    [[nodiscard]] std::vector<std::string> texts(std::string_view key) const;
    [[nodiscard]] std::vector<const toml::table*> tables(std::string_view key) const;
    [[nodiscard]] std::optional<int> week_if(std::string_view key) const;
    /// 1 = Monday .. 7 = Sunday.
    [[nodiscard]] int weekday(std::string_view key) const;
    [[nodiscard]] studio::TimeOfDay time(std::string_view key) const;
    /// Null if there is none.
    [[nodiscard]] const toml::table* table(std::string_view key) const;

  private:
    const toml::array* array(std::string_view key) const;
    const toml::table& table_;
    std::string file_;
};

}  // namespace lowledger::batch
