#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace lowledger::exchange {

/// A row of a CSV file, with as many fields as the head has.
struct CsvRow {
    /// Line of the file that the row starts on, from 1.
    std::size_t line = 0;
    std::vector<std::string> fields;
    bool operator==(const CsvRow&) const = default;
};

/// A CSV file with a head. Rows whose fields are all empty are left out.
struct CsvTable {
    /// As messages name it.
    std::string file;
    std::vector<std::string> head;
    std::size_t head_line = 0;
    std::vector<CsvRow> rows;
};

/// Reads CSV as RFC 4180 (Shafranovich 2005) has it, strictly: quotes only around a whole field, a quote in a
/// quoted field doubled. Also taken: a byte order mark, line ends LF or CRLF, and the semicolon where the
/// head has no comma (spreadsheets of countries with a decimal comma). Spaces around a field are dropped.
/// Throws Refusal that names file and line: bytes that are not UTF-8, control characters, a quote out of
/// place or never closed, a row longer or shorter than the head, a file without a head.
CsvTable read_csv(std::string_view text, std::string_view file);

/// The fields of a row by the name of their column.
class CsvColumns {
  public:
    /// Throws Refusal that names the file, the column and the columns it may have, when one of `required` is
    /// missing, one is in neither list, or one is there twice. Case does not matter.
    CsvColumns(const CsvTable& table, std::span<const std::string_view> required,
               std::span<const std::string_view> optional);

    [[nodiscard]] bool has(std::string_view column) const;
    /// Empty text where the file has no such column.
    [[nodiscard]] std::string_view field(const CsvRow& row, std::string_view column) const;

  private:
    [[nodiscard]] std::optional<std::size_t> index(std::string_view column) const;
    std::vector<std::string> names_;
};

/// Throws Refusal: "FILE, line 4, column cents: SENTENCE".
[[noreturn]] void refuse_field(const CsvTable& table, const CsvRow& row, std::string_view column,
                               std::string_view sentence);

}  // namespace lowledger::exchange
