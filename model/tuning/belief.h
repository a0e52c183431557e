#pragma once

#include <vector>

#include "model/tuning/answer.h"

namespace lowledger::tuning {

/// The profile, and what one more reading would tell.
struct Belief {
    TuningProfile profile;
    /// Covariance of `slides_mean` of a note (row) with the next reading of a note (column), cents squared.
    std::vector<double> slides_by_reading;
    /// Covariance of `mean`, the leans as played, notes x notes by rows, cents squared.
    std::vector<double> played_covariance;
    /// Variance of the next reading of each note, two takes in a sitting of its own, cents squared.
    std::vector<double> reading_variance;
};

/// Conditions the model of docs/tuning.md on all sheets that can be used: exact, by one Cholesky factor of
/// the readings' covariance (Rasmussen and Williams 2006, algorithm 2.1).
Belief believe(const TuningInputs& inputs, const Figures& figures);

}  // namespace lowledger::tuning
