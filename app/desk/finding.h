#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "app/desk/desk.h"
#include "app/desk/listing.h"
#include "model/studio/found.h"

namespace lowledger::desk {

/// How many records are shown at most.
inline constexpr int most_found = 50;

/// Records anywhere in the studio in which every word typed begins a word, those without a day first, then
/// the newest; only those that the window has a place for. None for an empty field.
std::vector<studio::Found> find_anything(const Desk& desk, std::string_view typed);

/// What kind of record each is, whose or which, the words found, the day. A row's id is its number among
/// `found`.
Listing found_listing(const Desk& desk, std::span<const studio::Found> found);

/// Turns to the place, page and section where the record is, with its row chosen.
void open_found(Desk& desk, const studio::Found& found);

}  // namespace lowledger::desk
