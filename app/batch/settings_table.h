#pragma once

#include <string>

#include "model/tuning/answer.h"
#include "model/units/pitch.h"

namespace lowledger::batch {

/// The answer as text for people: what is known, each slide, each note, what remains.
std::string settings_table(const tuning::TuningInputs& inputs, const tuning::TuningAnswer& answer,
                           units::Accidentals accidentals);

}  // namespace lowledger::batch
