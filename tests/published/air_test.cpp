#include "model/acoustics/air.h"

#include <cmath>
#include <gtest/gtest.h>

#include "model/units/hertz.h"
#include "tests/published/table.h"

namespace lowledger::published {
namespace {

using acoustics::Air;
using acoustics::speed_of_sound;
using units::Celsius;

units::Cents change(const Air& from, const Air& to) {
    return units::interval_of_ratio(speed_of_sound(to) / speed_of_sound(from));
}

/// Rows of the table; the one marked seen is printed in IEC 61094-2:2009, Table F.1.
TEST(PublishedAir, SpeedOfSound) {
    for (const Row& row : table("speed_of_sound_checks.csv")) {
        const Air air{.temperature = Celsius(row.number("t_C")),
                      .relative_humidity = row.number("RH_pct") / 100.0,
                      .pressure = units::Pascals(row.number("p_Pa")),
                      .carbon_dioxide = row.number("x_CO2")};
        const double digits = row.text("mark") == "seen" ? 5e-6 : 5e-5;
        EXPECT_NEAR(speed_of_sound(air).value(), row.number("c_m_s_Cramer_DavisPsv"), digits) << row.place();
    }
}

/// The simple law 331.3 sqrt(1 + t/273.15) agrees with Cramer's dry air to a part in a thousand.
TEST(PublishedAir, TheSimpleLawIsNear) {
    for (const double t : {0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0}) {
        const double simple = 331.3 * std::sqrt(1.0 + t / 273.15);
        const Air dry{.temperature = Celsius(t), .relative_humidity = 0.0, .carbon_dioxide = 0.000314};
        EXPECT_NEAR(speed_of_sound(dry).value() / simple, 1.0, 1e-3) << t;
    }
}

/// Derived from Cramer 1993: dry, 20 to 25 C; then 25 C with humidity 0 to 100 %, and carbon dioxide 0.04 to
/// 1 %.
TEST(PublishedAir, WhatTemperatureHumidityAndBreathDo) {
    const Air dry20{.temperature = Celsius(20.0), .relative_humidity = 0.0, .carbon_dioxide = 0.000314};
    Air dry25 = dry20;
    dry25.temperature = Celsius(25.0);
    EXPECT_NEAR(change(dry20, dry25).value(), 14.602, 5e-3);
    const Air dry{.temperature = Celsius(25.0), .relative_humidity = 0.0};
    const Air wet{.temperature = Celsius(25.0), .relative_humidity = 1.0};
    EXPECT_NEAR(change(dry, wet).value(), 8.56, 5e-3);
    Air breath = wet;
    breath.carbon_dioxide = 0.01;
    EXPECT_NEAR(change(wet, breath).value(), -4.26, 5e-3);
}

/// 600/(ln 2 T) cents a degree: 2.953 at 20 C, 2.928 at 22.5, 2.903 at 25 (derived). Teachers say about 3: D.
/// Sipe, "Temperature and Intonation", donaldsipe.com.
TEST(PublishedAir, CentsADegree) {
    for (const auto& [t, cents] : {std::pair{20.0, 2.953}, {22.5, 2.928}, {25.0, 2.903}}) {
        const auto step = acoustics::room_change(Celsius(t - 0.01), Celsius(t + 0.01), 1.0);
        EXPECT_NEAR(step.value() / 0.02, cents, 5e-4);
        EXPECT_NEAR(step.value() / 0.02, 3.0, 0.1);
    }
}

/// Common practice: a cold horn is flat.
TEST(PublishedAir, AColdHornIsFlat) {
    EXPECT_LT(acoustics::room_change(Celsius(21.0), Celsius(12.0), 0.75), units::Cents(-15.0));
    const Air cold{.temperature = Celsius(12.0)};
    const Air warm{.temperature = Celsius(28.0)};
    EXPECT_LT(speed_of_sound(cold), speed_of_sound(warm));
}

}  // namespace
}  // namespace lowledger::published
