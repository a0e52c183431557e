#pragma once

#include <string>
#include <vector>

#include "model/tuning/answer.h"
#include "reports/words/tuning_words.h"

namespace lowledger::words {

/// What probably happened to the slides between two sheets instead of what was written; empty where nothing
/// is to be told.
std::string move_sentence(const Speech& speech, const tuning::MoveCheck& check);

/// That a sheet may be another horn's.
std::string other_horn_sentence(const Speech& speech, const tuning::OtherHornWarning& warning);

/// Which sheets of others the profile rests on besides, a sentence each.
std::vector<std::string> rests_on_others(const Words& words, const tuning::TuningProfile& profile);

}  // namespace lowledger::words
