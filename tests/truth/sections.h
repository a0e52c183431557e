#pragma once

#include "tests/truth/report.h"

namespace lowledger::truth {

/// The optimum against an independent solver, a grid, and enumeration of a lattice.
void optimum(Report& report);
/// Whether nine of ten truths lie in 90 % intervals.
void calibration(Report& report);

}  // namespace lowledger::truth
