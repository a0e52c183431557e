#pragma once

#include <vector>

#include "app/desk/slip.h"
#include "reports/pages/player.h"

namespace lowledger::desk {

class Desk;

/// Asks on a slip whom pages are for: the student or the horn whose page is open, everybody, a group, or
/// students one by one. `shown_first` says that the open page's is what it starts with.
void ask_whom(Slip& slip, const Desk& desk, bool shown_first);

/// Those asked for who play a horn today, once for each horn of theirs, by name. Throws Refusal where nobody
/// does.
std::vector<pages::Player> players_chosen(const Desk& desk, const SlipAnswers& answers);

}  // namespace lowledger::desk
