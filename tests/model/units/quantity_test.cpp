#include "model/units/quantity.h"

#include <cmath>
#include <gtest/gtest.h>

#include "model/units/celsius.h"
#include "model/units/hertz.h"

namespace lowledger::units {
namespace {

TEST(Quantity, OneUnitAddsAndScales) {
    Cents sum = 3_cents + 4.5_cents;
    sum += 0.5_cents;
    sum -= 2_cents;
    sum *= 2.0;
    EXPECT_DOUBLE_EQ(sum.value(), 12.0);
    EXPECT_DOUBLE_EQ((-sum / 4.0).value(), -3.0);
    EXPECT_DOUBLE_EQ(sum / 4_cents, 3.0);
    EXPECT_EQ(abs(-7_cents), 7_cents);
    EXPECT_EQ(abs(7_cents), 7_cents);
    EXPECT_LT(-1_cents, 0_cents);
}

TEST(Quantity, ASlopeTimesAPullIsAnInterval) {
    const CentsPerMillimetre slope = -6_cents / 10_mm;
    EXPECT_DOUBLE_EQ((slope * 5_mm).value(), -3.0);
    EXPECT_EQ(slope * 5_mm, 5_mm * slope);
    EXPECT_DOUBLE_EQ(square(-6_cents).value(), 36.0);
}

TEST(Quantity, AnInchIs72PointsAndASizeGoesThereAndBack) {
    EXPECT_DOUBLE_EQ(in_millimetres(72_pt).value(), 25.4);
    EXPECT_DOUBLE_EQ(in_points(in_millimetres(10.5_pt)).value(), 10.5);
}

TEST(Celsius, TemperaturesDifferByKelvins) {
    EXPECT_DOUBLE_EQ(Celsius(0.0).absolute().value(), 273.15);
    EXPECT_DOUBLE_EQ((Celsius(25.0) - Celsius(20.0)).value(), 5.0);
    EXPECT_EQ(Celsius(20.0) + Kelvins(5.0), Celsius(25.0));
    EXPECT_EQ(Celsius(20.0) - Kelvins(5.0), Celsius(15.0));
}

TEST(Hertz, AnOctaveIs1200CentsAndIntervalsGoThereAndBack) {
    EXPECT_DOUBLE_EQ(interval(Hertz(220.0), Hertz(440.0)).value(), 1200.0);
    for (const double cents : {-3000.0, -50.0, -0.01, 0.0, 0.01, 14.0, 702.0, 4800.0}) {
        EXPECT_NEAR(interval(Hertz(58.27), raised(Hertz(58.27), Cents(cents))).value(), cents, 1e-9);
        EXPECT_NEAR(interval_of_ratio(ratio(Cents(cents))).value(), cents, 1e-9);
        EXPECT_NEAR(ratio(Cents(cents)) * ratio(Cents(-cents)), 1.0, 1e-14);
    }
}

}  // namespace
}  // namespace lowledger::units
