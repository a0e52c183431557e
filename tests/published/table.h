#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace lowledger::published {

/// A row of a published table: column -> cell.
class Row {
  public:
    Row(std::map<std::string, std::string> cells, std::string place)
        : cells_(std::move(cells)), place_(std::move(place)) {}
    /// Throws std::runtime_error if there is no such column.
    [[nodiscard]] const std::string& text(const std::string& column) const;
    /// Throws std::runtime_error if the cell is no number.
    [[nodiscard]] double number(const std::string& column) const;
    [[nodiscard]] int integer(const std::string& column) const { return static_cast<int>(number(column)); }
    /// File, line and source, for the message of a check that fails.
    [[nodiscard]] const std::string& place() const { return place_; }

  private:
    std::map<std::string, std::string> cells_;
    std::string place_;
};

/// The rows of tests/data/published/NAME. Throws std::runtime_error if it is missing, empty, has no `source`
/// column or a row of another width. Cells hold no commas.
std::vector<Row> table(std::string_view name);

}  // namespace lowledger::published
