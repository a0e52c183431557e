#pragma once

#include <nlohmann/json.hpp>

#include "model/tuning/profile.h"

namespace lowledger::exchange {

/// What the profile says of its own sheets, of the player's correction, of the slides' pull and of the arm:
/// fields for the profile of lowledger.settings/1.
nlohmann::json checks_json(const tuning::TuningProfile& profile);

}  // namespace lowledger::exchange
