#pragma once

#include <compare>

#include "model/units/quantity.h"

namespace lowledger::units {

/// A temperature on the Celsius scale: a point, not a difference. Two of them do not add; their difference is
/// Kelvins.
class Celsius {
  public:
    constexpr explicit Celsius(double degrees) : degrees_(degrees) {}
    [[nodiscard]] constexpr double value() const { return degrees_; }
    /// Absolute temperature: 0 C is 273.15 K.
    [[nodiscard]] constexpr Kelvins absolute() const { return Kelvins(degrees_ + 273.15); }

    constexpr auto operator<=>(const Celsius&) const = default;
    friend constexpr Kelvins operator-(Celsius a, Celsius b) { return Kelvins(a.degrees_ - b.degrees_); }
    friend constexpr Celsius operator+(Celsius t, Kelvins by) { return Celsius(t.degrees_ + by.value()); }
    friend constexpr Celsius operator-(Celsius t, Kelvins by) { return Celsius(t.degrees_ - by.value()); }

  private:
    double degrees_;
};

}  // namespace lowledger::units
