#include "tests/truth/bore.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <numbers>

namespace lowledger::truth {
namespace {

using Complex = std::complex<double>;

constexpr double pi = std::numbers::pi;
constexpr double sound = 343.987;
constexpr double density = 1.2;
constexpr int most_partial = 12;

/// A horn of about the length of a euphonium or B-flat trombone, in metres; leans go by parts of its length.
constexpr double tube_radius = 0.0065;
constexpr double tube_length = 1.35;
constexpr double flare_length = 1.25;
constexpr double bell_radius = 0.12;
/// Of the mouthpiece's cup, in cubic metres, and of its throat and backbore.
constexpr double cup_volume = 9.0e-6;
constexpr double throat_radius = 0.0033;
constexpr double throat_length = 0.055;

double impedance_of(double radius) {
    return density * sound / (pi * radius * radius);
}

/// Load through a cylinder with losses at its wall.
Complex through(Complex load, double radius, double length, double frequency) {
    const double omega = 2.0 * pi * frequency;
    const double root = radius * std::sqrt(omega);
    const double loss = 3.0e-5 * std::sqrt(frequency) / radius;
    const Complex gamma(loss, omega / (sound * (1.0 - 1.65e-3 / root)));
    const double own = impedance_of(radius);
    const Complex tangent = std::tanh(gamma * length);
    return own * (load + own * tangent) / (own + load * tangent);
}

/// A Bessel flare, radius b (x0 - x)^-0.7 with x from the tube to the bell.
double flare_radius(double along) {
    constexpr double power = 0.7;
    const double ratio = std::pow(bell_radius / tube_radius, 1.0 / power);
    const double to_pole = flare_length / (ratio - 1.0);
    return bell_radius * std::pow(to_pole / (flare_length - along + to_pole), power);
}

/// Size of the input impedance with `added` metres of tube.
double impedance(double frequency, double added) {
    const double omega = 2.0 * pi * frequency;
    const double ka = omega / sound * bell_radius;
    Complex load = impedance_of(bell_radius) * Complex(0.25 * ka * ka, 0.6133 * ka);
    constexpr int slices = 60;
    for (int k = slices; k-- > 0;) {
        // Finer towards the bell, where the flare is.
        const double from = flare_length * (1.0 - std::pow(1.0 - static_cast<double>(k) / slices, 2.0));
        const double to = flare_length * (1.0 - std::pow(1.0 - (k + 1.0) / slices, 2.0));
        load = through(load, flare_radius(0.5 * (from + to)), to - from, frequency);
    }
    load = through(load, tube_radius, tube_length + added, frequency);
    load = through(load, throat_radius, throat_length, frequency);
    const Complex cup(0.0, -density * sound * sound / (omega * cup_volume));
    return std::abs(load * cup / (load + cup));
}

/// The peak nearest above `from`, refined by a parabola through three points.
double next_peak(double from, double added) {
    constexpr double step = 0.25;
    double before = impedance(from, added);
    double here = impedance(from + step, added);
    for (double f = from + 2.0 * step; f < 3000.0; f += step) {
        const double after = impedance(f, added);
        if (here > before && here >= after) {
            const double bend = before - 2.0 * here + after;
            return f - step + 0.5 * step * (before - after) / bend;
        }
        before = here;
        here = after;
    }
    return 3000.0;
}

std::array<double, most_partial + 1> resonances(double added) {
    std::array<double, most_partial + 1> peaks{};
    double from = 15.0;
    for (int n = 1; n <= most_partial; ++n) {
        peaks[static_cast<std::size_t>(n)] = next_peak(from, added);
        from = peaks[static_cast<std::size_t>(n)] + 1.0;
    }
    return peaks;
}

/// Leans of the partials against n c/(2 (open + added)), `open` fitted without added tube.
class LineBore {
  public:
    LineBore() {
        double sum = 0.0;
        const auto open = resonances(0.0);
        for (std::size_t n = 2; n <= 8; ++n)
            sum += std::log2(open[n] / static_cast<double>(n));
        open_ = sound / (2.0 * std::exp2(sum / 7.0));
        for (std::size_t k = 0; k < leans_.size(); ++k) {
            const double added = step * open_ * (static_cast<double>(k) - 1.0);
            const auto peaks = resonances(added);
            for (std::size_t n = 1; n <= most_partial; ++n) {
                const double plain = static_cast<double>(n) * sound / (2.0 * (open_ + added));
                leans_[k][n] = 1200.0 * std::log2(peaks[n] / plain);
            }
        }
    }

    [[nodiscard]] units::Cents lean(double length_ratio, int partial) const {
        const auto n = static_cast<std::size_t>(std::clamp(partial, 1, most_partial));
        const double last = static_cast<double>(leans_.size() - 2);
        const double at = std::clamp((length_ratio - 1.0) / step + 1.0, 0.0, last + 0.999);
        const auto k = static_cast<std::size_t>(at);
        const double part = at - static_cast<double>(k);
        return units::Cents((1.0 - part) * leans_[k][n] + part * leans_[k + 1][n]);
    }

  private:
    static constexpr double step = 0.05;
    double open_ = 0.0;
    std::array<std::array<double, most_partial + 1>, 18> leans_{};
};

}  // namespace

BoreLean transmission_line_bore() {
    static const LineBore bore;
    return [](double length_ratio, int partial) { return bore.lean(length_ratio, partial); };
}

}  // namespace lowledger::truth
