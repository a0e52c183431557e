#pragma once

#include "model/tuning/answer.h"
#include "model/tuning/belief.h"

namespace lowledger::tuning {

/// The note whose reading is expected to lower the cost of not knowing most: the first tuning note that is
/// missing; then the one that takes most off tr(A C A' H), the regret of the best slide positions under what
/// is believed. Empty where that is less than a hundredth of a squared cent.
std::optional<NextNote> next_note(const TuningInputs& inputs, const Belief& belief,
                                  const SettingsQuestion& question, const SlideSettings& settings,
                                  const EnoughReadings& enough);

}  // namespace lowledger::tuning
