#pragma once

#include <string>

#include "model/studio/practice.h"
#include "reports/words/words.h"

namespace lowledger::words {

/// "Mon"; 1 = Monday .. 7 = Sunday.
std::string weekday_short(const Words& words, int weekday);
std::string weekday_name(const Words& words, int weekday);

/// "every day", "Mon, Wed, Fri".
std::string weekdays_text(const Words& words, studio::Weekdays days);

/// How much of a routine: the amount that was given, or else its dose, and about how long; empty where
/// neither is said.
std::string how_much(const Words& words, const studio::Routine& routine, const std::string& amount);

}  // namespace lowledger::words
