#pragma once

#include <vector>

#include "model/tuning/settings.h"
#include "tests/model/tuning/random_question.h"

namespace lowledger::truth {

/// Where slides may stand.
struct Bounds {
    std::vector<double> low, high;
};
Bounds bounds_of(const tuning::SettingsQuestion& question);

/// Least value that NLopt's subplex method finds from so many starts.
double nlopt_best(const tuning::PlainObjective& objective, const Bounds& bounds, int starts);

/// Least value over every combination of `places`, slide by slide.
double least_of_all(const tuning::PlainObjective& objective, const std::vector<std::vector<double>>& places);

/// `points` places for each slide from end to end, one where it cannot move.
std::vector<std::vector<double>> grid_of(const Bounds& bounds, int points);

/// Where each slide stands and the multiples of the question's step between its limits.
std::vector<std::vector<double>> lattice_of(const tuning::SettingsQuestion& question);

}  // namespace lowledger::truth
