#pragma once

#include <optional>

#include "model/tuning/answer.h"

namespace lowledger::tuning {

/// Both places of the main slide, the first that acts on every note. Both with the belief's own spread, so
/// that they differ by the player's settled pitch alone. Empty where no such slide may move.
std::optional<BothMains> both_mains(const TuningProfile& profile, const SettingsQuestion& question,
                                    const SlideSettings& settings);

}  // namespace lowledger::tuning
