#include "tests/published/table.h"

#include <fstream>
#include <sstream>
#include <stdexcept>

#include "model/units/number_text.h"

namespace lowledger::published {
namespace {

std::vector<std::string> cells_of(const std::string& line) {
    std::vector<std::string> cells(1);
    for (const char c : line) {
        if (c == ',') {
            cells.emplace_back();
        } else {
            cells.back() += c;
        }
    }
    return cells;
}

}  // namespace

const std::string& Row::text(const std::string& column) const {
    const auto at = cells_.find(column);
    if (at == cells_.end()) throw std::runtime_error(place_ + ": no column " + column);
    return at->second;
}

double Row::number(const std::string& column) const {
    const auto value = units::parse_decimal(text(column));
    if (!value) throw std::runtime_error(place_ + ": " + column + " is no number: " + text(column));
    return *value;
}

std::vector<Row> table(std::string_view name) {
    const std::string path = std::string(LOWLEDGER_TEST_DATA "/published/") + std::string(name);
    std::ifstream file(path);
    std::string line;
    if (!std::getline(file, line)) throw std::runtime_error("cannot read " + path);
    const auto columns = cells_of(line);
    std::vector<Row> rows;
    for (int number = 2; std::getline(file, line); ++number) {
        const auto cells = cells_of(line);
        const std::string place = std::string(name) + " line " + std::to_string(number);
        if (cells.size() != columns.size()) throw std::runtime_error(place + ": another number of cells");
        std::map<std::string, std::string> row;
        for (std::size_t i = 0; i < columns.size(); ++i)
            row[columns[i]] = cells[i];
        if (row["source"].empty()) throw std::runtime_error(place + ": no source");
        rows.emplace_back(row, place + " (" + row["source"] + ")");
    }
    if (rows.empty()) throw std::runtime_error(path + " has no rows");
    return rows;
}

}  // namespace lowledger::published
