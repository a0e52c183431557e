#pragma once

#include <cstdint>
#include <vector>

#include "app/desk/desk.h"
#include "app/desk/listing.h"
#include "app/desk/pictures.h"

namespace lowledger::desk {

/// As many of the newest sheets stand in one picture.
inline constexpr std::size_t sheets_in_a_picture = 8;

/// The sheets of the page's student on the page's horn by id, newest first: day, readings, mean, how it was
/// played.
Listing sheets_listing(const Desk& desk);

/// Turns to that sheet of the page's student.
void open_sheet(Desk& desk, studio::TuningSheetId sheet);

/// What the sheets say of each note. Where two of them are chosen, those beside each other; else the newest
/// ones over time, older ones fainter. An empty page where there is no reading.
Picture sheets_picture(const PictureTools& tools, const Desk& desk, const std::vector<std::int64_t>& chosen,
                       units::Millimetres width);

}  // namespace lowledger::desk
