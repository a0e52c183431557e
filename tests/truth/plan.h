#pragma once

#include "tests/truth/world.h"

namespace lowledger::truth {

inline const studio::Date today{2026, 3, 2};

/// Kinds with valves, in turn.
const horns::HornKind& valved_kind(int number);

/// The tuning notes and then those that the program asks for next, on a horn just as its kind.
const std::vector<Played>& planned_notes(const horns::HornKind& kind, studio::Level level, std::size_t most);

/// Weighted mean |cents| over the notes of a question.
struct MeanLean {
    double answered = 0.0;
    double heard = 0.0;
};
/// With the ways chosen in `settings` and the slides truly at `at`.
MeanLean mean_lean(const World& world, const tuning::SettingsQuestion& question,
                   const tuning::SlideSettings& settings, const Places& at);

}  // namespace lowledger::truth
