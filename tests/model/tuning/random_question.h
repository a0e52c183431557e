#pragma once

#include <random>
#include <vector>

#include "model/tuning/settings.h"

namespace lowledger::tuning {

/// A question about a horn that nobody built: two to five valves, slides anywhere in their travel, notes with
/// beliefs drawn at random, alternates for some. Every move is worth it and nothing caps the mean, so that
/// the answer is the plain optimum.
SettingsQuestion random_question(unsigned seed);

/// The objective written out again for the tests, straight from the page: no code of the search.
class PlainObjective {
  public:
    explicit PlainObjective(const SettingsQuestion& question);
    double operator()(const std::vector<double>& positions) const;
    /// Weighted mean lean of the best ways there.
    double mean_lean(const std::vector<double>& positions) const;

  private:
    struct Way {
        double weight, mean, spread, penalty, length;
        std::vector<double> pull;
    };
    double lean(const Way& way, const std::vector<double>& positions) const;

    double flat_weight_;
    std::vector<double> now_, moving_cost_;
    std::vector<std::vector<Way>> notes_;
};

/// Where a question's slides stand, and as recommended.
std::vector<double> positions_now(const SettingsQuestion& question);
std::vector<double> positions_recommended(const SlideSettings& settings);

}  // namespace lowledger::tuning
