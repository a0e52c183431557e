#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "model/tuning/loss.h"
#include "model/tuning/settings.h"

namespace lowledger::tuning {
namespace {

/// The same by quadrature: Simpson's rule over twelve standard deviations each side, split at the kink.
double by_quadrature(double mean, double spread, auto cost) {
    const double low = mean - 12.0 * spread;
    const double high = mean + 12.0 * spread;
    const double kink = std::min(std::max(0.0, low), high);
    const auto part = [&](double from, double to) {
        constexpr int steps = 4000;
        const double h = (to - from) / steps;
        double sum = 0.0;
        for (int k = 0; k <= steps; ++k) {
            const double x = from + k * h;
            const double z = (x - mean) / spread;
            const double density = std::exp(-0.5 * z * z) / (spread * std::sqrt(2.0 * std::numbers::pi));
            const int weight = k == 0 || k == steps ? 1 : (k % 2 == 1 ? 4 : 2);
            sum += weight * cost(x) * density;
        }
        return sum * h / 3.0;
    };
    return part(low, kink) + part(kink, high);
}

TEST(ExpectedCost, EqualsQuadrature) {
    for (const double a : {0.5, 1.0, 1.5, 3.0}) {
        for (const double mean : {-60.0, -7.0, -0.3, 0.0, 0.3, 7.0, 60.0}) {
            for (const double spread : {0.1, 1.0, 8.0, 30.0}) {
                const double expected =
                    by_quadrature(mean, spread, [a](double x) { return (x < 0.0 ? a : 1.0) * x * x; });
                EXPECT_NEAR(expected_cost(units::Cents(mean), units::Cents(spread), a).value(), expected,
                            1e-9 * (1.0 + expected))
                    << mean << " " << spread << " " << a;
                EXPECT_NEAR(expected_size_of(mean, spread),
                            by_quadrature(mean, spread, [](double x) { return std::abs(x); }),
                            1e-8 * (1.0 + std::abs(mean)));
            }
        }
    }
}

TEST(ExpectedCost, WithoutSpreadIsTheCostItself) {
    EXPECT_EQ(expected_cost(units::Cents(4.0), units::Cents(0.0), 1.5).value(), 16.0);
    EXPECT_EQ(expected_cost(units::Cents(-4.0), units::Cents(0.0), 1.5).value(), 24.0);
    EXPECT_NEAR(expected_cost(units::Cents(-4.0), units::Cents(1e-6), 1.5).value(), 24.0, 1e-9);
}

TEST(ExpectedCost, DerivativesEqualDifferences) {
    constexpr double h = 1e-4;
    for (const double mean : {-30.0, -2.0, 0.0, 2.0, 30.0}) {
        for (const double spread : {1.0, 6.0, 20.0}) {
            const ExpectedCost at = expected_cost_of(mean, spread, 1.5);
            const ExpectedCost above = expected_cost_of(mean + h, spread, 1.5);
            const ExpectedCost below = expected_cost_of(mean - h, spread, 1.5);
            EXPECT_NEAR(at.slope, (above.value - below.value) / (2.0 * h), 1e-6 * (1.0 + std::abs(at.slope)));
            EXPECT_NEAR(at.curvature, (above.slope - below.slope) / (2.0 * h), 1e-6);
        }
    }
}

}  // namespace
}  // namespace lowledger::tuning
