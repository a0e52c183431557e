#pragma once

#include <optional>
#include <string>

#include "model/units/celsius.h"
#include "model/units/quantity.h"

namespace lowledger::acoustics {

/// Air in the bore. `relative_humidity` 0..1, `carbon_dioxide` a mole fraction.
struct Air {
    units::Celsius temperature{20.0};
    double relative_humidity = 0.5;
    units::Pascals pressure{101325.0};
    double carbon_dioxide = 0.0004;
};

/// Speed of sound by O. Cramer, J. Acoust. Soc. Am. 93(5), 2510-2516 (1993), formula of p. 2514 with the
/// coefficients of its Table III; the saturation pressure of water is Davis 1992. Throws Refusal for what is
/// no air that anybody plays in (beyond -40..60 C, 0..100 % humidity, 30..120 kPa, a tenth carbon dioxide);
/// exact within 0..30 C, 75..102 kPa, water up to 0.06,
/// carbon dioxide up to 0.01 (mole fractions).
units::MetresPerSecond speed_of_sound(const Air& air);

/// Which limit of Cramer's formula `air` passes, as a sentence; empty inside them.
std::optional<std::string> outside_range(const Air& air);

/// The reference of lengths: 20 C, 50 % relative humidity, 101325 Pa (343.987 m/s).
units::MetresPerSecond reference_speed_of_sound();

/// How much sharper a horn sounds in a room of `room` than in one of `usual`:
/// beta 600 log2((room + 273.15)/(usual + 273.15)); `beta` is the part of the room's change that the air in
/// the bore follows.
units::Cents room_change(units::Celsius usual, units::Celsius room, double beta);

}  // namespace lowledger::acoustics
