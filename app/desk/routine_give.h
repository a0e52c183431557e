#pragma once

#include <chrono>
#include <optional>
#include <vector>

#include "app/desk/action.h"
#include "app/desk/slip.h"
#include "reports/words/words.h"

namespace lowledger::desk {

/// What is given to students and practised by them, and the pieces they work on.
std::vector<Action> given_actions();

/// The field "minutes" of a slip: empty, or a whole number from 1 to `most`.
Slip::Check minutes_check(const words::Words& words, int most);
std::optional<std::chrono::minutes> minutes_in(const SlipAnswers& answers);

}  // namespace lowledger::desk
