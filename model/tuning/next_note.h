#pragma once

#include "model/tuning/answer.h"
#include "model/tuning/belief.h"

namespace lowledger::tuning {

/// The note, and the way of playing it, whose reading is expected to lower the cost of not knowing most: the
/// first tuning note that is missing; then the one that takes most off tr(A C A' H), the regret of the best
/// slide positions under what is believed, and off the expected cost by showing which ways are best, the
/// slides as recommended. Empty where that is less than a hundredth of a squared cent.
std::optional<NextNote> next_note(const TuningInputs& inputs, const Belief& belief,
                                  const SettingsQuestion& question, const SlideSettings& settings,
                                  const EnoughReadings& enough);

}  // namespace lowledger::tuning
