#pragma once

#include "model/tuning/settings.h"

namespace lowledger::tuning {

/// Throws Refusal for a question that has no sense, with a sentence that names the slide or note and says
/// what to do.
void check(const SettingsQuestion& question);

}  // namespace lowledger::tuning
