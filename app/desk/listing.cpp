#include "app/desk/listing.h"

#include "app/desk/lists.h"

namespace lowledger::desk {
namespace {

std::string on_one_line(std::string text) {
    for (char& c : text)
        if (c == '\t' || c == '\n' || c == '\r') c = ' ';
    return text;
}

bool is_digit(char32_t c) {
    return U'0' <= c && c <= U'9';
}

/// The digits that stand at `at`, without leading zeros; `at` moves behind them.
std::u32string_view number_at(std::u32string_view text, std::size_t& at) {
    while (at < text.size() && text[at] == U'0')
        ++at;
    const std::size_t first = at;
    while (at < text.size() && is_digit(text[at]))
        ++at;
    return text.substr(first, at - first);
}

/// Letter by letter, numbers by their size: T-2 before T-11.
bool stands_before(std::u32string_view a, std::u32string_view b) {
    std::size_t i = 0;
    std::size_t j = 0;
    while (i < a.size() && j < b.size()) {
        if (is_digit(a[i]) && is_digit(b[j])) {
            const auto first = number_at(a, i);
            const auto second = number_at(b, j);
            if (first.size() != second.size()) return first.size() < second.size();
            if (first != second) return first < second;
        } else if (a[i] != b[j]) {
            return a[i] < b[j];
        } else {
            ++i;
            ++j;
        }
    }
    return a.size() - i < b.size() - j;
}

}  // namespace

ListingCell::ListingCell(std::string shown, studio::Date day)
    : text(std::move(shown)), order(static_cast<double>(day - studio::Date(2000, 1, 1))) {}

bool stands_before(const ListingCell& a, const ListingCell& b) {
    if (a.order && b.order) return *a.order < *b.order;
    return stands_before(folded(a.text), folded(b.text));
}

std::string as_spreadsheet(const Listing& listing, std::span<const ListingRow> rows) {
    std::string out;
    const auto end_line = [&] { out.back() = '\n'; };
    for (const auto& column : listing.columns)
        out += on_one_line(column.title) + "\t";
    end_line();
    for (const auto& row : rows) {
        for (const auto& cell : row.cells)
            out += on_one_line(cell.text) + "\t";
        end_line();
    }
    return out;
}

}  // namespace lowledger::desk
