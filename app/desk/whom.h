#pragma once

#include <vector>

#include "app/desk/slip.h"
#include "reports/pages/player.h"
#include "reports/words/words.h"

namespace lowledger::desk {

class Desk;

/// Asks on a slip whom pages are for: the student or the horn whose page is open, everybody, a group, or
/// students one by one. `shown_first` says that the open page's is what it starts with, `everybody` how the
/// choice of all is called.
void ask_whom(Slip& slip, const Desk& desk, bool shown_first,
              words::Sentence all = words::Sentence::print_for_all);

/// Those asked for who play a horn today, once for each horn of theirs, by name. Throws Refusal where nobody
/// does.
std::vector<pages::Player> players_chosen(const Desk& desk, const SlipAnswers& answers);

/// Those asked for, whether they play a horn or not, by name; of a horn's page those who play it today.
std::vector<studio::Student> students_chosen(const Desk& desk, const SlipAnswers& answers);

/// The class or group asked for by name; empty for others.
std::string group_chosen(const Desk& desk, const SlipAnswers& answers);

}  // namespace lowledger::desk
