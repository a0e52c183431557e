#pragma once

#include <string>
#include <string_view>

#include "model/tuning/answer.h"

namespace lowledger::exchange {

/// The version of the program that answers, "0.1.0"; filed with settings that are given out.
std::string_view engine_version();

/// The answer and everything it rests on, as `lowledger.settings/1` (docs/schemas): from it alone the
/// objective before and after can be computed again. Numbers are written so that they read back as the same
/// doubles.
std::string settings_json(const tuning::TuningInputs& inputs, const tuning::TuningAnswer& answer);

}  // namespace lowledger::exchange
