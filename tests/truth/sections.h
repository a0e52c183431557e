#pragma once

#include "tests/truth/report.h"

namespace lowledger::truth {

/// The optimum against an independent solver, a grid, and enumeration of a lattice.
void optimum(Report& report);
/// Whether nine of ten truths lie in 90 % intervals.
void calibration(Report& report);
/// Worlds that are not as the model thinks: what is lost, and what is pointed out.
void wrong_worlds(Report& report);
/// What following the card is worth beside doing nothing, the trade's way and knowing everything.
void worth(Report& report);

}  // namespace lowledger::truth
