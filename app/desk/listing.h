#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "model/studio/date.h"

namespace lowledger::desk {

/// What stands in one column of a row.
struct ListingCell {
    ListingCell() = default;
    // NOLINTNEXTLINE(google-explicit-constructor,hicpp-explicit-conversions): rows are written as texts
    ListingCell(std::string shown) : text(std::move(shown)) {}
    // NOLINTNEXTLINE(google-explicit-constructor,hicpp-explicit-conversions)
    ListingCell(const char* shown) : text(shown) {}
    ListingCell(std::string shown, double sorts_as) : text(std::move(shown)), order(sorts_as) {}
    /// Sorted by the day, whatever the words for it.
    ListingCell(std::string shown, studio::Date day);

    std::string text;
    /// What the column is sorted by; empty: by the text.
    std::optional<double> order;
    bool operator==(const ListingCell&) const = default;
};

struct ListingRow {
    /// Of the record that it shows.
    std::int64_t id = 0;
    std::vector<ListingCell> cells;
    /// Of what is past or put away.
    bool faint = false;
    bool operator==(const ListingRow&) const = default;
};

struct ListingColumn {
    std::string title;
    /// Numbers stand at the right.
    bool number = false;
    /// It is read whole before others get more than their least width.
    bool keeps_width = false;
};

/// A table of records, without a window: what a list on screen shows, sorts and copies.
struct Listing {
    std::vector<ListingColumn> columns;
    std::vector<ListingRow> rows;
};

/// Whether `a` stands before `b` in a column sorted upwards: by order where both have one, else by text,
/// letters of either case alike, numbers in it by their size.
bool stands_before(const ListingCell& a, const ListingCell& b);

/// The rows under their titles, cells parted by tabs: what a spreadsheet takes from the clipboard. A tab or
/// line break inside a cell becomes a space.
std::string as_spreadsheet(const Listing& listing, std::span<const ListingRow> rows);

}  // namespace lowledger::desk
