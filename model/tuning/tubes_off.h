#pragma once

#include <vector>

#include "model/tuning/answer.h"

namespace lowledger::tuning {

/// Slides at a limit that leave their notes sharp at their travel, or flat at their least.
std::vector<TubeOff> tubes_off(const SettingsQuestion& question, const SlideSettings& settings);

}  // namespace lowledger::tuning
