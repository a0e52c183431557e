#pragma once

#include <vector>

#include "model/tuning/answer.h"
#include "model/tuning/belief.h"

namespace lowledger::tuning {

/// For each slide that the tuning order sets through more than one valve and that may move: the weighted
/// notes of its step's valves, or fewer of them with the slide's own, by Var(reading)/((cents per mm)^2
/// weight). Slides with fewer than two such notes have no question to answer.
std::vector<NotesForSlide> notes_for_slides(const TuningInputs& inputs, const Belief& belief,
                                            const SettingsQuestion& question, const SlideSettings& settings);

}  // namespace lowledger::tuning
