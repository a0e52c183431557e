#pragma once

#include "model/tuning/answer.h"

namespace lowledger::tuning {

/// The weighted notes outside the tolerance after the settings, and the next thing to do about each.
Remains remains_of(const TuningInputs& inputs, const TuningProfile& profile, const SettingsQuestion& question,
                   const SlideSettings& settings, const Figures& figures);

}  // namespace lowledger::tuning
