#include "model/tuning/conditioning.h"

#include <cmath>

namespace lowledger::tuning {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

Index index(std::size_t i) {
    return static_cast<Index>(i);
}

VectorXd off_of(const std::vector<Row>& rows) {
    VectorXd off(index(rows.size()));
    for (std::size_t i = 0; i < rows.size(); ++i)
        off[index(i)] = rows[i].off;
    return off;
}

}  // namespace

std::vector<Row> rows_of(const Evidence& evidence) {
    std::vector<Row> rows;
    for (const MeasuredNote& note : evidence.notes)
        rows.push_back({note.terms, note.sheet->on, (note.mean - note.expected).value(), note.noise.value()});
    for (const Warming& warming : evidence.warmings) {
        rows.push_back({warming.terms, warming.sheet->on, warming.each_round.value(), warming.noise.value()});
    }
    return rows;
}

MatrixXd covariance_of(const std::vector<Row>& rows) {
    MatrixXd covariance(index(rows.size()), index(rows.size()));
    for (std::size_t i = 0; i < rows.size(); ++i) {
        for (std::size_t j = 0; j <= i; ++j) {
            const double shared = shared_variance(rows[i].terms, rows[j].terms, rows[i].on - rows[j].on);
            covariance(index(i), index(j)) = shared;
            covariance(index(j), index(i)) = shared;
        }
        covariance(index(i), index(i)) += rows[i].noise;
    }
    return covariance;
}

Conditioning::Conditioning(const std::vector<Row>& rows, studio::Date today)
    : rows_(rows), today_(today), off_(off_of(rows)), factor_(covariance_of(rows)) {
    solved_off_ = factor_.solve(off_);
}

MatrixXd Conditioning::with_readings(const std::vector<Terms>& terms) const {
    MatrixXd covariance(index(terms.size()), index(rows_.size()));
    for (std::size_t i = 0; i < terms.size(); ++i) {
        for (std::size_t j = 0; j < rows_.size(); ++j) {
            covariance(index(i), index(j)) = shared_variance(terms[i], rows_[j].terms, today_ - rows_[j].on);
        }
    }
    return covariance;
}

VectorXd Conditioning::mean(const Prediction& prediction, const MatrixXd& with) const {
    return Eigen::Map<const VectorXd>(prediction.expected.data(), index(prediction.expected.size())) +
           with * solved_off_;
}

MatrixXd Conditioning::half(const MatrixXd& with) const {
    return factor_.matrixL().solve(with.transpose());
}

MatrixXd Conditioning::inverse() const {
    return factor_.solve(MatrixXd::Identity(off_.size(), off_.size()));
}

double Conditioning::log_likelihood() const {
    const MatrixXd& factor = factor_.matrixLLT();
    return -0.5 * off_.dot(solved_off_) - factor.diagonal().array().log().sum();
}

MatrixXd prior(const std::vector<Terms>& rows, const std::vector<Terms>& columns) {
    MatrixXd covariance(index(rows.size()), index(columns.size()));
    const bool symmetric = &rows == &columns;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        for (std::size_t j = symmetric ? i : 0; j < columns.size(); ++j) {
            covariance(index(i), index(j)) = shared_variance(rows[i], columns[j], 0);
            if (symmetric) covariance(index(j), index(i)) = covariance(index(i), index(j));
        }
    }
    return covariance;
}

}  // namespace lowledger::tuning
