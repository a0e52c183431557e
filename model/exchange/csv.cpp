#include "model/exchange/csv.h"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>

#include "model/exchange/utf8.h"
#include "model/units/refusal.h"

namespace lowledger::exchange {

namespace {

[[noreturn]] void refuse_line(std::string_view file, std::size_t line, std::string_view sentence) {
    throw units::Refusal(fmt::format("{}, line {}: {}", file, line, sentence));
}

void require_text(std::string_view text, std::string_view file) {
    if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
        throw units::Refusal(fmt::format(
            "{} is saved as UTF-16. Save it again as CSV with the encoding UTF-8 and try again.", file));
    if (const auto bad = first_bad_byte(text)) {
        const auto line =
            1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(*bad), '\n');
        refuse_line(file, static_cast<std::size_t>(line),
                    "a letter there is not UTF-8 (an older encoding such as Latin-1, perhaps). Save the file "
                    "again with the encoding UTF-8 and try again.");
    }
    const auto control = std::find_if(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) < 0x20 && c != '\t' && c != '\n' && c != '\r') || c == '\x7F';
    });
    if (control != text.end())
        refuse_line(file, 1 + static_cast<std::size_t>(std::count(text.begin(), control, '\n')),
                    "there is a control character, so this is no file of text. Export the sheet as CSV.");
}

std::string trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return std::string(text.substr(first, text.find_last_not_of(" \t") - first + 1));
}

/// Cuts text into rows; knows nothing of heads.
class Scanner {
  public:
    Scanner(std::string_view text, std::string_view file, char separator)
        : text_(text), file_(file), separator_(separator) {}

    std::optional<CsvRow> next_row() {
        if (at_ == text_.size()) return std::nullopt;
        CsvRow row{line_, {}};
        for (;;) {
            row.fields.push_back(next_field());
            if (at_ == text_.size()) return row;
            if (text_[at_] == separator_) {
                ++at_;
                continue;
            }
            end_line();
            return row;
        }
    }

  private:
    [[nodiscard]] bool at_line_end() const {
        return at_ == text_.size() || text_[at_] == '\n' || text_[at_] == '\r';
    }
    [[nodiscard]] bool at_field_end() const { return at_line_end() || text_[at_] == separator_; }

    void skip_blanks() {
        while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == '\t'))
            ++at_;
    }

    std::string next_field() {
        skip_blanks();
        if (at_ < text_.size() && text_[at_] == '"') return quoted_field();
        const std::size_t from = at_;
        while (!at_field_end()) {
            if (text_[at_] == '"')
                refuse_line(file_, line_,
                            "a quotation mark stands inside a field. Put the whole field in quotation marks "
                            "and double the one inside it.");
            ++at_;
        }
        return trimmed(text_.substr(from, at_ - from));
    }

    std::string quoted_field() {
        const std::size_t opened_on = line_;
        std::string field;
        for (++at_;; ++at_) {
            if (at_ == text_.size())
                refuse_line(file_, opened_on,
                            "a quotation mark opens a field and is never closed. Close it.");
            if (text_[at_] == '\n') ++line_;
            if (text_[at_] == '"') {
                const bool doubled = at_ + 1 < text_.size() && text_[at_ + 1] == '"';
                if (!doubled) break;
                ++at_;
            }
            field += text_[at_];
        }
        ++at_;
        skip_blanks();
        if (!at_field_end())
            refuse_line(file_, line_,
                        "text follows a closing quotation mark. Put the whole field in quotation marks.");
        return trimmed(field);
    }

    void end_line() {
        if (text_[at_] == '\r') ++at_;
        if (at_ < text_.size() && text_[at_] == '\n') ++at_;
        ++line_;
    }

    std::string_view text_;
    std::string_view file_;
    char separator_;
    std::size_t at_ = 0;
    std::size_t line_ = 1;
};

bool blank(const CsvRow& row) {
    return std::all_of(row.fields.begin(), row.fields.end(),
                       [](const std::string& field) { return field.empty(); });
}

char separator_of(std::string_view text) {
    const std::size_t first = text.find_first_not_of("\r\n");
    const std::string_view head = first == std::string_view::npos
                                      ? text
                                      : text.substr(first, text.find_first_of("\r\n", first) - first);
    const bool semicolons = head.find(';') != std::string_view::npos;
    return semicolons && head.find(',') == std::string_view::npos ? ';' : ',';
}

void require_length(const CsvTable& table, CsvRow& row) {
    while (row.fields.size() > table.head.size() && row.fields.back().empty())
        row.fields.pop_back();
    if (row.fields.size() == table.head.size()) return;
    refuse_line(table.file, row.line,
                fmt::format("the head has {} columns, this row {}. {}", table.head.size(), row.fields.size(),
                            row.fields.size() > table.head.size()
                                ? "Put a value with a comma in quotation marks (\"7,5\"), or write a point."
                                : "Write all of them; leave an unknown value empty but keep its comma."));
}

std::string lower(std::string_view text) {
    std::string out(text);
    for (char& c : out)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return out;
}

}  // namespace

CsvTable read_csv(std::string_view text, std::string_view file) {
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    require_text(text, file);
    Scanner scanner(text, file, separator_of(text));
    CsvTable table{std::string(file), {}, 0, {}};
    while (auto row = scanner.next_row()) {
        if (blank(*row)) continue;
        if (table.head.empty()) {
            while (row->fields.back().empty())
                row->fields.pop_back();
            table.head = std::move(row->fields);
            table.head_line = row->line;
            continue;
        }
        require_length(table, *row);
        table.rows.push_back(std::move(*row));
    }
    if (table.head.empty())
        throw units::Refusal(
            fmt::format("{} is empty. Its first line names the columns, then comes one row a line.", file));
    return table;
}

CsvColumns::CsvColumns(const CsvTable& table, std::span<const std::string_view> required,
                       std::span<const std::string_view> optional) {
    const std::string may_have =
        optional.empty()
            ? fmt::format("{}", fmt::join(required, ", "))
            : fmt::format("{}, and if you like {}", fmt::join(required, ", "), fmt::join(optional, ", "));
    const auto refuse = [&](std::string_view what) {
        refuse_line(table.file, table.head_line, fmt::format("{} The columns are: {}.", what, may_have));
    };
    for (const std::string& column : table.head) {
        const std::string name = lower(column);
        const bool known = std::find(required.begin(), required.end(), name) != required.end() ||
                           std::find(optional.begin(), optional.end(), name) != optional.end();
        if (name.empty()) refuse("A column has no name.");
        if (!known) refuse(fmt::format("There is no column \"{}\" in such a sheet.", column));
        if (has(name)) refuse(fmt::format("The column {} is there twice. Keep one.", name));
        names_.push_back(name);
    }
    for (const std::string_view name : required)
        if (!has(name)) refuse(fmt::format("The column {} is missing.", name));
}

std::optional<std::size_t> CsvColumns::index(std::string_view column) const {
    const auto found = std::find(names_.begin(), names_.end(), column);
    if (found == names_.end()) return std::nullopt;
    return static_cast<std::size_t>(found - names_.begin());
}

bool CsvColumns::has(std::string_view column) const {
    return index(column).has_value();
}

std::string_view CsvColumns::field(const CsvRow& row, std::string_view column) const {
    const auto at = index(column);
    return at ? std::string_view(row.fields[*at]) : std::string_view();
}

void refuse_field(const CsvTable& table, const CsvRow& row, std::string_view column,
                  std::string_view sentence) {
    throw units::Refusal(fmt::format("{}, line {}, column {}: {}", table.file, row.line, column, sentence));
}

}  // namespace lowledger::exchange
