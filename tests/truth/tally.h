#pragma once

#include <cstddef>
#include <vector>

namespace lowledger::truth {

/// Numbers, one a horn, and what is said of them.
class Tally {
  public:
    void add(double value) { values_.push_back(value); }
    [[nodiscard]] std::size_t size() const { return values_.size(); }
    [[nodiscard]] double mean() const;
    /// Of the mean.
    [[nodiscard]] double error() const;
    [[nodiscard]] double root_mean_square() const;
    /// Mean of the largest tenth.
    [[nodiscard]] double worst_tenth() const;
    [[nodiscard]] double worst_tenth_error() const;
    [[nodiscard]] double largest() const;

  private:
    std::vector<double> values_;
};

/// How many of some things were so, gathered by horn: the things of one horn hang together, so the error is
/// that of a ratio of two sums over horns (Cochran 1977, Sampling Techniques, equation 6.13).
class Share {
  public:
    void add_horn(double hits, double of);
    [[nodiscard]] double percent() const;
    [[nodiscard]] double error() const;
    [[nodiscard]] std::size_t horns() const { return of_.size(); }
    [[nodiscard]] double things() const;

  private:
    std::vector<double> hits_;
    std::vector<double> of_;
};

}  // namespace lowledger::truth
