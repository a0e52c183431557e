#include "model/tuning/loss.h"

#include <cmath>
#include <numbers>

#include "model/tuning/settings.h"

namespace lowledger::tuning {
namespace {

double normal_density(double z) {
    constexpr double scale = std::numbers::inv_sqrtpi / std::numbers::sqrt2;
    return scale * std::exp(-0.5 * z * z);
}

}  // namespace

double normal_below(double z) {
    return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

ExpectedCost expected_cost_of(double mean, double spread, double flat_weight) {
    if (spread <= 0.0) {
        const double side = mean >= 0.0 ? 1.0 : flat_weight;
        return {side * mean * mean, 2.0 * side * mean, 2.0 * side};
    }
    const double z = mean / spread;
    const double sharp = normal_below(z);
    const double side = sharp + flat_weight * (1.0 - sharp);
    const double edge = (1.0 - flat_weight) * spread * normal_density(z);
    return {(mean * mean + spread * spread) * side + mean * edge, 2.0 * (mean * side + edge), 2.0 * side};
}

double expected_size_of(double mean, double spread) {
    if (spread <= 0.0) return std::abs(mean);
    const double z = mean / spread;
    return 2.0 * spread * normal_density(z) + mean * (1.0 - 2.0 * normal_below(-z));
}

units::SquareCents expected_cost(units::Cents mean, units::Cents spread, double flat_weight) {
    return units::SquareCents(expected_cost_of(mean.value(), spread.value(), flat_weight).value);
}

}  // namespace lowledger::tuning
