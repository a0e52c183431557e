#pragma once

#include <vector>

#include "app/desk/action.h"
#include "app/desk/listing.h"

namespace lowledger::desk {

/// Entering what the student of the page practised.
std::vector<Action> practice_actions();
/// The pieces that they work on.
std::vector<Action> piece_actions();

/// The last eight weeks, this one first: days practised of those due, and minutes. A row's id is how many
/// weeks ago it was.
Listing practice_listing(const Desk& desk);
/// What the student works on, and worked on, newest first.
Listing pieces_listing(const Desk& desk);

}  // namespace lowledger::desk
