#pragma once

#include <vector>

#include "model/tuning/conditioning.h"

namespace lowledger::tuning {

/// Readings as all tests for errors look at them.
struct Examined {
    const Evidence& evidence;
    const std::vector<Row>& rows;
    const Conditioning& conditioning;
    /// V^-1.
    Eigen::MatrixXd inverse;
};

/// An error that adds `j` x to the rows, for an x that nobody knows.
struct Score {
    /// j'V^-1 e/(j'V^-1 j): the likeliest x.
    double size = 0.0;
    /// Its standard deviation, 1/sqrt(j'V^-1 j).
    double spread = 0.0;
    /// N(0, 1) where there is no such error.
    double z = 0.0;
};

/// The score test of one more unknown in a normal model, here exact (Rao 1948, Proc. Camb. Phil. Soc. 44,
/// 50).
Score score(const Examined& examined, const Eigen::VectorXd& j);

/// Logarithm of how many times likelier the rows are if `j` was added to them.
double log_ratio(const Examined& examined, const Eigen::VectorXd& j);

/// Standard deviations from which an error is told so that all `tests` together warn by mistake with a chance
/// of at most `false_alarms` (Bonferroni), but not fewer than `least`.
double told_from(std::size_t tests, double false_alarms, double least);

}  // namespace lowledger::tuning
