#pragma once

#include <map>

#include "model/tuning/slide_problem.h"

namespace lowledger::tuning {

struct Found {
    Positions at;
    Choice ways;
    /// The guarded objective there.
    double value = 0.0;
};

/// Minimises with the ways fixed, from `start`: proximal Newton steps (Lee, Sun and Saunders 2014), whose
/// model, a quadratic with the kinks of the cost of moving and the limits, is solved exactly (`model_step`).
/// Convex as long as leans stay within 1000 cents (docs/tuning.md, 'The certificate').
Found minimise_with_ways(const SlideProblem& problem, const Choice& ways, Positions start);

/// Minimises over positions and ways, from many starts in a fixed order; on the places of each slide where it
/// has them.
Found minimise(const SlideProblem& problem);

/// The same with any position between the limits, whatever the places: what the places are held against.
Found minimise_anywhere(const SlideProblem& problem);

/// Caps the mean lean of the ways that are best where nothing caps it. Returns the optimum with any position,
/// under the cap.
Found cap_mean(SlideProblem& problem);

/// `minimise`, beginning with what the answer of a problem that differs little from it says.
Found minimise_from(const SlideProblem& problem, const Positions& start);

/// `minimise_anywhere` from one start: for a problem that differs little from one whose answer is known.
Found minimise_near(const SlideProblem& problem, const Positions& start);

}  // namespace lowledger::tuning
