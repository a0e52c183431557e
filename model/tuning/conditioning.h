#pragma once

#include <Eigen/Dense>

#include "model/tuning/measured.h"
#include "model/tuning/predictions.h"

namespace lowledger::tuning {

/// One number that was read: by how many cents it is off what is expected, of which unknowns, how noisily.
struct Row {
    Terms terms;
    studio::Date on;
    double off = 0.0;
    double noise = 0.0;
};
/// Notes first, then warmings.
std::vector<Row> rows_of(const Evidence& evidence);

/// Covariance of the rows before anything is read, cents squared.
Eigen::MatrixXd covariance_of(const std::vector<Row>& rows);

/// The rows' covariance, factorised, and what follows from it (Rasmussen and Williams 2006, algorithm 2.1).
class Conditioning {
  public:
    Conditioning(const std::vector<Row>& rows, studio::Date today);

    /// Covariance of sums of terms as they are today (rows) with what was read (columns).
    [[nodiscard]] Eigen::MatrixXd with_readings(const std::vector<Terms>& terms) const;
    [[nodiscard]] Eigen::VectorXd mean(const Prediction& prediction, const Eigen::MatrixXd& with) const;
    /// L^-1 with', so that a posterior covariance is prior - half(A)' half(B).
    [[nodiscard]] Eigen::MatrixXd half(const Eigen::MatrixXd& with) const;

    /// V^-1 e.
    [[nodiscard]] const Eigen::VectorXd& solved_off() const { return solved_off_; }
    [[nodiscard]] Eigen::VectorXd solve(const Eigen::VectorXd& vector) const { return factor_.solve(vector); }
    [[nodiscard]] Eigen::MatrixXd inverse() const;
    /// log N(e; 0, V) without its constant.
    [[nodiscard]] double log_likelihood() const;

  private:
    const std::vector<Row>& rows_;
    studio::Date today_;
    Eigen::VectorXd off_;
    Eigen::LLT<Eigen::MatrixXd> factor_;
    Eigen::VectorXd solved_off_;
};

/// Prior covariance of sums of terms at one time.
Eigen::MatrixXd prior(const std::vector<Terms>& rows, const std::vector<Terms>& columns);

}  // namespace lowledger::tuning
