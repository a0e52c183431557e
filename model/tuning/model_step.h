#pragma once

#include "model/tuning/slide_problem.h"

namespace lowledger::tuning {

/// The step from `at` that minimises the local model together with the cost of moving, inside the limits: a
/// convex quadratic with a kink in each coordinate, solved exactly by a primal active set (Nocedal and Wright
/// 2006, algorithm 16.3, with the kinks as further places to stop at).
Positions model_step(const SlideProblem& problem, const LocalModel& model, const Positions& at);

}  // namespace lowledger::tuning
