#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/desk/desk.h"
#include "app/desk/listing.h"

namespace lowledger::desk {

/// A table of records in a section of a page or a dialog of its own.
struct TableEntry {
    Table table;
    /// What it is called, over it and by screen readers.
    words::Sentence name;
    /// What is said while there is no row.
    words::Sentence empty;
    /// The actions beside it and of a row's context menu.
    std::vector<std::string_view> offers;
    /// What Enter on a row does.
    std::string_view opens;
    std::function<Listing(const Desk& desk)> listing;
    /// What is said over the rows; none: nothing.
    std::function<std::string(const Desk& desk)> summary{};
    /// The row that is turned to; none: the one chosen last, or the first.
    std::function<std::optional<std::int64_t>(const Desk& desk)> turned_to{};
};

/// All tables.
const std::vector<TableEntry>& tables();
const TableEntry& entry_of(Table table);

}  // namespace lowledger::desk
