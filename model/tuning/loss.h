#pragma once

namespace lowledger::tuning {

/// The expected cost of a lean and its derivatives by the mean, in cents and cents squared. The kernel of the
/// search, hence bare numbers; `expected_cost` in settings.h is the same with units.
struct ExpectedCost {
    /// E[x^2 (x>0) + a x^2 (x<0)], x ~ N(mean, spread^2).
    double value = 0.0;
    double slope = 0.0;
    /// 2 [Phi(z) + a Phi(-z)]: never below 2 min(1, a), so the cost is strictly convex in the mean.
    double curvature = 0.0;
};
ExpectedCost expected_cost_of(double mean, double spread, double flat_weight);

/// E|x| of x ~ N(mean, spread^2), the folded normal (Leone, Nelson and Nottingham 1961).
double expected_size_of(double mean, double spread);

/// Distribution function of the standard normal.
double normal_below(double z);

}  // namespace lowledger::tuning
