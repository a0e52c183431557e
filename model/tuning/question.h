#pragma once

#include "model/tuning/answer.h"

namespace lowledger::tuning {

/// Throws Refusal for slides, in whatever part of the inputs, that the kind does not have.
void check_inputs(const TuningInputs& inputs);

/// The steps of the tuning order that no used reading speaks of.
EnoughReadings enough_readings(const TuningInputs& inputs);

/// Lays the question of the slide settings out: the profile's notes with their weights and ways, the slides
/// with the teacher's hand on them, the constants.
SettingsQuestion question_of(const TuningInputs& inputs, const TuningProfile& profile,
                             const EnoughReadings& enough, const Figures& figures);

/// Index in `profile.notes` of every way of the question, in its order.
std::vector<std::size_t> ways_of_question(const TuningInputs& inputs, const TuningProfile& profile);

}  // namespace lowledger::tuning
