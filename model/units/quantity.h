#pragma once

#include <compare>

namespace lowledger::units {

/// A number with a unit. Made from and turned into a bare number only by name, so two units never mix.
/// Everything of one `Unit` adds and scales; a ratio of two is a bare number.
template <typename Unit>
class Quantity {
  public:
    constexpr Quantity() = default;
    constexpr explicit Quantity(double value) : value_(value) {}

    /// The bare number, in the unit that the type names.
    [[nodiscard]] constexpr double value() const { return value_; }

    constexpr auto operator<=>(const Quantity&) const = default;

    constexpr Quantity& operator+=(Quantity other) {
        value_ += other.value_;
        return *this;
    }
    constexpr Quantity& operator-=(Quantity other) {
        value_ -= other.value_;
        return *this;
    }
    constexpr Quantity& operator*=(double factor) {
        value_ *= factor;
        return *this;
    }
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.value_ + b.value_); }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.value_ - b.value_); }
    friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.value_); }
    friend constexpr Quantity operator*(Quantity a, double factor) { return Quantity(a.value_ * factor); }
    friend constexpr Quantity operator*(double factor, Quantity a) { return Quantity(factor * a.value_); }
    friend constexpr Quantity operator/(Quantity a, double divisor) { return Quantity(a.value_ / divisor); }
    friend constexpr double operator/(Quantity a, Quantity b) { return a.value_ / b.value_; }

  private:
    double value_ = 0.0;
};

/// The size without the sign.
template <typename Unit>
constexpr Quantity<Unit> abs(Quantity<Unit> a) {
    return a.value() < 0.0 ? -a : a;
}

/// Interval, sharp positive; 1200 to the octave.
using Cents = Quantity<struct CentsUnit>;
/// Square of an interval, as in a sum of squared leans.
using SquareCents = Quantity<struct SquareCentsUnit>;
/// Length.
using Millimetres = Quantity<struct MillimetresUnit>;
/// How much a note moves for a pull.
using CentsPerMillimetre = Quantity<struct CentsPerMillimetreUnit>;
/// Difference of two temperatures.
using Kelvins = Quantity<struct KelvinsUnit>;
/// Speed.
using MetresPerSecond = Quantity<struct MetresPerSecondUnit>;
/// Pressure.
using Pascals = Quantity<struct PascalsUnit>;
/// Size of type.
using Points = Quantity<struct PointsUnit>;

constexpr SquareCents operator*(Cents a, Cents b) {
    return SquareCents(a.value() * b.value());
}
constexpr SquareCents square(Cents a) {
    return a * a;
}
constexpr CentsPerMillimetre operator/(Cents a, Millimetres b) {
    return CentsPerMillimetre(a.value() / b.value());
}
constexpr Cents operator*(CentsPerMillimetre slope, Millimetres pull) {
    return Cents(slope.value() * pull.value());
}
constexpr Cents operator*(Millimetres pull, CentsPerMillimetre slope) {
    return slope * pull;
}

/// 1 pt = 1/72 inch (PostScript point, as PDF uses it).
constexpr Millimetres in_millimetres(Points size) {
    return Millimetres(size.value() * 25.4 / 72.0);
}
constexpr Points in_points(Millimetres length) {
    return Points(length.value() * 72.0 / 25.4);
}

inline namespace literals {
constexpr Cents operator""_cents(long double v) {
    return Cents(static_cast<double>(v));
}
constexpr Cents operator""_cents(unsigned long long v) {
    return Cents(static_cast<double>(v));
}
constexpr Millimetres operator""_mm(long double v) {
    return Millimetres(static_cast<double>(v));
}
constexpr Millimetres operator""_mm(unsigned long long v) {
    return Millimetres(static_cast<double>(v));
}
constexpr Points operator""_pt(long double v) {
    return Points(static_cast<double>(v));
}
constexpr Points operator""_pt(unsigned long long v) {
    return Points(static_cast<double>(v));
}
}  // namespace literals

}  // namespace lowledger::units
