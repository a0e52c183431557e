#include "model/acoustics/air.h"

#include <array>
#include <cmath>
#include <fmt/format.h>

#include "model/units/hertz.h"
#include "model/units/refusal.h"

namespace lowledger::acoustics {
namespace {

/// Cramer 1993, Table III, a0 to a15.
constexpr std::array<double, 16> cramer = {331.5024,  0.603055,  -0.000528, 51.471935, 0.1495874, -0.000782,
                                           -1.82e-7,  3.73e-8,   -2.93e-10, -85.20931, -0.228525, 5.91e-5,
                                           -2.835149, -2.15e-13, 29.179762, 0.000486};

/// Saturation pressure of water vapour in Pa: R. S. Davis, Metrologia 29, 67-70 (1992).
double saturation_pressure(double kelvin) {
    return std::exp(1.2378847e-5 * kelvin * kelvin - 1.9121316e-2 * kelvin + 33.93711047 -
                    6343.1645 / kelvin);
}

/// Mole fraction of water: h f p_sv/p, with the enhancement factor f of Davis 1992.
double water_fraction(const Air& air) {
    const double t = air.temperature.value();
    const double p = air.pressure.value();
    const double enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * t * t;
    return air.relative_humidity * enhancement * saturation_pressure(air.temperature.absolute().value()) / p;
}

/// NaN lies inside no span.
bool inside(double value, double low, double high) {
    return value >= low && value <= high;
}

/// Below this the formula is no description of air at all.
void refuse_what_is_no_air(const Air& air) {
    if (!inside(air.temperature.value(), -40.0, 60.0)) {
        throw units::Refusal(
            "The speed of sound is known from -40 to 60 degrees Celsius only; check the temperature.");
    }
    if (!inside(air.relative_humidity, 0.0, 1.0)) {
        throw units::Refusal("Relative humidity goes from 0 to 100 %; check the humidity.");
    }
    if (!inside(air.pressure.value(), 30000.0, 120000.0)) {
        throw units::Refusal("Air pressure goes from 30 to 120 kPa; check the pressure.");
    }
    if (!inside(air.carbon_dioxide, 0.0, 0.1)) {
        throw units::Refusal("The share of carbon dioxide goes from 0 to 10 %; check it.");
    }
}

}  // namespace

units::MetresPerSecond speed_of_sound(const Air& air) {
    refuse_what_is_no_air(air);
    const auto& a = cramer;
    const double t = air.temperature.value();
    const double p = air.pressure.value();
    const double water = water_fraction(air);
    const double carbon = air.carbon_dioxide;
    return units::MetresPerSecond(a[0] + a[1] * t + a[2] * t * t + (a[3] + a[4] * t + a[5] * t * t) * water +
                                  (a[6] + a[7] * t + a[8] * t * t) * p +
                                  (a[9] + a[10] * t + a[11] * t * t) * carbon + a[12] * water * water +
                                  a[13] * p * p + a[14] * carbon * carbon + a[15] * water * p * carbon);
}

std::optional<std::string> outside_range(const Air& air) {
    if (!inside(air.temperature.value(), 0.0, 30.0)) {
        return fmt::format(
            "The formula for the speed of sound is exact from 0 to 30 degrees Celsius, not at {:.1f}.",
            air.temperature.value());
    }
    if (!inside(air.pressure.value(), 75000.0, 102000.0)) {
        return fmt::format("The formula for the speed of sound is exact from 75 to 102 kPa, not at {:.1f}.",
                           air.pressure.value() / 1000.0);
    }
    if (!inside(air.relative_humidity, 0.0, 1.0) || !inside(water_fraction(air), 0.0, 0.06)) {
        return "The formula for the speed of sound is exact up to 6 % water vapour; this air is wetter.";
    }
    if (!inside(air.carbon_dioxide, 0.0, 0.01)) {
        return "The formula for the speed of sound is exact up to 1 % carbon dioxide; this air has more.";
    }
    return std::nullopt;
}

units::MetresPerSecond reference_speed_of_sound() {
    static const units::MetresPerSecond speed = speed_of_sound(Air{});
    return speed;
}

units::Cents room_change(units::Celsius usual, units::Celsius room, double beta) {
    return 0.5 * beta * units::interval_of_ratio(room.absolute() / usual.absolute());
}

}  // namespace lowledger::acoustics
