#pragma once

#include <optional>
#include <string>

#include "model/studio/lending.h"
#include "model/studio/lessons.h"
#include "model/studio/people.h"
#include "reports/words/words.h"

/// How the records of the studio book are told.
namespace lowledger::words {

std::string work_name(const Words& words, studio::Upkeep::Work work);
/// "a mouthpiece only"; empty where it is not known.
std::string at_home_text(const Words& words, const std::optional<studio::AtHome>& at_home);
/// "missed", "cancelled"; empty for a lesson that is planned or was kept.
std::string lesson_not_kept(const Words& words, studio::Lesson::State state);
/// "25 November 2026"; empty for none.
std::string date_or_nothing(const Words& words, const std::optional<studio::Date>& date);
/// "1250.50 EUR"; empty for none.
std::string money_or_nothing(const std::optional<studio::Money>& money);

}  // namespace lowledger::words
