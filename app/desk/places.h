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

/// The list at the left of a place: what it shows, and what opening a row turns to.
struct PlaceList {
    /// The action under the list.
    std::string_view add;
    /// The actions of a row's context menu.
    std::vector<std::string_view> offers;
    /// The rows in which every word of `find` is found; all for an empty one.
    std::function<Listing(const Desk& desk, std::string_view find)> listing;
    /// The view with that record's page open.
    std::function<View(const View& view, std::int64_t record)> opened;
    /// What is said while there is no record yet, and while none is open.
    words::Sentence empty;
    words::Sentence choose;
    /// The record whose page is open.
    std::function<std::optional<std::int64_t>(const View& view)> open;
};

/// A section of a place's page, reached by Ctrl and its number in the page.
struct SectionEntry {
    Section section;
    std::string_view go_action;
    /// As the menu has it, `&` before the mnemonic.
    std::string_view text;
};

/// A place of the window: where it stands in the menu, its list, if it has one, and its page's sections.
struct PlaceEntry {
    Place place;
    std::string_view go_action;
    /// As the menu has it, `&` before the mnemonic.
    std::string_view text;
    std::string_view key;
    std::optional<PlaceList> list;
    std::vector<SectionEntry> sections;
};

/// All places, in the order of the window.
const std::vector<PlaceEntry>& places();
const PlaceEntry& entry_of(Place place);
/// The name without its mnemonic: "Students".
std::string title_of(Place place);
std::string title_of(const SectionEntry& section);
/// The section that the view shows, and its number from 0 in the page.
Section section_of(const View& view);
std::size_t section_number(const View& view);

}  // namespace lowledger::desk
