#pragma once

#include <compare>

#include "model/units/quantity.h"

namespace lowledger::units {

/// A frequency. Frequencies compare by ratio (`interval`, `operator/`); they do not add.
class Hertz {
  public:
    constexpr explicit Hertz(double value) : value_(value) {}
    [[nodiscard]] constexpr double value() const { return value_; }

    constexpr auto operator<=>(const Hertz&) const = default;
    friend constexpr Hertz operator*(Hertz f, double factor) { return Hertz(f.value_ * factor); }
    friend constexpr Hertz operator*(double factor, Hertz f) { return f * factor; }
    friend constexpr double operator/(Hertz a, Hertz b) { return a.value_ / b.value_; }

  private:
    double value_;
};

/// The international standard pitch, A4 = 440 Hz (ISO 16:1975).
inline constexpr Hertz standard_a4{440.0};

/// From `a` up to `b`: 1200 log2(b/a). Both above zero.
Cents interval(Hertz a, Hertz b);

/// `f` raised by `by`: f 2^(by/1200).
Hertz raised(Hertz f, Cents by);

/// 2^(by/1200), the frequency ratio of an interval.
double ratio(Cents by);

/// 1200 log2(r), the interval of a frequency ratio above zero.
Cents interval_of_ratio(double r);

}  // namespace lowledger::units
