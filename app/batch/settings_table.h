#pragma once

#include <string>

#include "model/horns/note_style.h"
#include "model/tuning/answer.h"

namespace lowledger::batch {

/// The answer as text for people: what is known, each slide, each note, what remains.
std::string settings_table(const tuning::TuningInputs& inputs, const tuning::TuningAnswer& answer,
                           const horns::NoteStyle& style);

}  // namespace lowledger::batch
