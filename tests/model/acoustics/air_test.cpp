#include "model/acoustics/air.h"

#include <gtest/gtest.h>
#include <limits>

#include "model/units/hertz.h"
#include "model/units/refusal.h"

namespace lowledger::acoustics {
namespace {

using units::Celsius;

TEST(Air, SoundIsFasterInWarmerWetterAirAndSlowerInCarbonDioxide) {
    for (const double t : {0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 29.0}) {
        const Air air{.temperature = Celsius(t)};
        EXPECT_GT(speed_of_sound({.temperature = Celsius(t + 1.0)}), speed_of_sound(air));
        EXPECT_GT(speed_of_sound({.temperature = Celsius(t), .relative_humidity = 0.9}), speed_of_sound(air));
        EXPECT_LT(speed_of_sound({.temperature = Celsius(t), .carbon_dioxide = 0.01}), speed_of_sound(air));
    }
}

TEST(Air, ReferenceIsTheDefault) {
    EXPECT_EQ(reference_speed_of_sound(), speed_of_sound(Air{}));
}

TEST(Air, NamesTheLimitItPasses) {
    EXPECT_FALSE(outside_range(Air{}));
    EXPECT_FALSE(outside_range({.temperature = Celsius(0.0)}));
    EXPECT_FALSE(outside_range({.temperature = Celsius(30.0), .relative_humidity = 1.0}));
    EXPECT_NE(outside_range({.temperature = Celsius(-0.1)})->find("0 to 30"), std::string::npos);
    EXPECT_NE(outside_range({.temperature = Celsius(37.0)})->find("37.0"), std::string::npos);
    EXPECT_NE(outside_range({.pressure = units::Pascals(70000.0)})->find("kPa"), std::string::npos);
    EXPECT_NE(outside_range({.carbon_dioxide = 0.02})->find("carbon dioxide"), std::string::npos);
}

TEST(Air, WhatIsNoAirIsRefused) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_THROW(speed_of_sound({.temperature = Celsius(nan)}), units::Refusal);
    EXPECT_THROW(speed_of_sound({.temperature = Celsius(-41.0)}), units::Refusal);
    EXPECT_THROW(speed_of_sound({.relative_humidity = 50.0}), units::Refusal)
        << "a percentage is no fraction";
    EXPECT_THROW(speed_of_sound({.pressure = units::Pascals(1013.25)}), units::Refusal) << "hPa are not Pa";
    EXPECT_THROW(speed_of_sound({.carbon_dioxide = -0.1}), units::Refusal);
}

TEST(Room, AWarmerRoomIsSharperByTheShareTheBoreFollows) {
    const auto full = room_change(Celsius(21.0), Celsius(26.0), 1.0);
    EXPECT_GT(full, units::Cents(14.0));
    EXPECT_LT(full, units::Cents(15.0));
    EXPECT_NEAR(room_change(Celsius(21.0), Celsius(26.0), 0.75).value(), 0.75 * full.value(), 1e-12);
    EXPECT_DOUBLE_EQ(room_change(Celsius(21.0), Celsius(21.0), 0.75).value(), 0.0);
    EXPECT_NEAR(room_change(Celsius(26.0), Celsius(21.0), 1.0).value(), -full.value(), 1e-12);
}

}  // namespace
}  // namespace lowledger::acoustics
