#pragma once

#include <optional>

#include "model/store/studio_file.h"
#include "model/studio/records.h"
#include "model/tuning/answer.h"

namespace lowledger::desk {

/// What was told as it is kept, its certificate worked out where the answer has none yet. Of no sheet.
studio::GivenSettings given_settings(const tuning::TuningInputs& question, tuning::TuningAnswer answer,
                                     studio::StudentId student, studio::HornId horn, studio::Date on);

/// The same settings, given out on the same day already.
std::optional<studio::GivenSettings> given_already(const store::StudioFile& file,
                                                   const studio::GivenSettings& settings);

}  // namespace lowledger::desk
