#pragma once

#include <vector>

#include "model/tuning/answer.h"

namespace lowledger::tuning {

/// The rules that cost less than the usual fingerings, and at most a tenth more than choosing note by note. A
/// family is the weighted notes whose usual valves are the same and which all may be played with the same
/// other valves on the same partial.
std::vector<FamilyRule> family_rules(const SettingsQuestion& question, const SlideSettings& settings);

}  // namespace lowledger::tuning
