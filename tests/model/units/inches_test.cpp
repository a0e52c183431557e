#include "model/units/inches.h"

#include <cmath>
#include <gtest/gtest.h>

namespace lowledger::units {
namespace {

TEST(Inches, AreReadAsOnARule) {
    EXPECT_EQ(inch_text(25.4_mm), "1");
    EXPECT_EQ(inch_text(12.7_mm), "1/2");
    EXPECT_EQ(inch_text(87.8_mm), "3 7/16");
    EXPECT_EQ(inch_text(0_mm), "0");
    EXPECT_EQ(inch_text(0.5_mm), "0");
    EXPECT_EQ(inch_text(-31.75_mm), "-1 1/4");
    EXPECT_EQ(inch_text(25.3_mm), "1") << "the nearest sixteenth may be the next inch";
}

TEST(Inches, AreNeverFurtherOffThanHalfASixteenth) {
    for (int tenths = -500; tenths < 7000; tenths += 7) {
        const double mm = tenths / 10.0;
        EXPECT_LE(std::abs(in_sixteenths(Millimetres(mm)) * 25.4 / 16.0 - mm), 25.4 / 32.0 + 1e-9);
    }
}

}  // namespace
}  // namespace lowledger::units
