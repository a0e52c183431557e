#pragma once

#include "model/tuning/answer.h"
#include "model/tuning/belief.h"

namespace lowledger::tuning {

/// Writes the settings as steps in the kind's tuning order (docs/tuning.md, "The card").
TuningCard card_of(const TuningInputs& inputs, const Belief& belief, const SettingsQuestion& question,
                   const SlideSettings& settings, const Figures& figures);

}  // namespace lowledger::tuning
