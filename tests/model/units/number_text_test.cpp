#include "model/units/number_text.h"

#include <clocale>
#include <gtest/gtest.h>
#include <limits>
#include <string>

namespace lowledger::units {
namespace {

TEST(NumberText, EveryFormOfADecimalIsUnderstood) {
    const std::pair<const char*, double> forms[] = {
        {"12", 12.0},   {"+12", 12.0},  {"-12", -12.0},        {"\u221212", -12.0}, {"12.5", 12.5},
        {"12,5", 12.5}, {"-0,5", -0.5}, {"\u22120.25", -0.25}, {"  7 ", 7.0},       {"\t+3.0\r\n", 3.0},
        {"0", 0.0},     {".5", 0.5},    {"007", 7.0},
    };
    for (const auto& [text, value] : forms) {
        const auto read = parse_decimal(text);
        ASSERT_TRUE(read) << text;
        EXPECT_DOUBLE_EQ(*read, value) << text;
    }
}

TEST(NumberText, WhatIsNoDecimalIsRefused) {
    for (const char* text : {"",    " ",    "+",     "-",     "\u2212",  "+-3",      "++3",    "--3",
                             "3-",  "1 2",  "1,2,3", "1.2.3", "1,234.5", "1.234,5",  "twelve", "12c",
                             "1e3", "0x10", "inf",   "nan",   "-inf",    "5\u221212"}) {
        EXPECT_FALSE(parse_decimal(text)) << text;
    }
}

TEST(NumberText, IntegersAreWholeOrNothing) {
    EXPECT_EQ(parse_integer("42"), 42);
    EXPECT_EQ(parse_integer(" +42 "), 42);
    EXPECT_EQ(parse_integer("\u22127"), -7);
    for (const char* text : {"", "4.0", "4,0", "4 2", "99999999999", "four", "0b1", "+-4"})
        EXPECT_FALSE(parse_integer(text)) << text;
}

TEST(NumberText, PlacesAreKeptAndZeroHasNoSign) {
    EXPECT_EQ(decimal_text(-7.0, 0), "-7");
    EXPECT_EQ(decimal_text(12.5, 1), "12.5");
    EXPECT_EQ(decimal_text(12.0, 2), "12.00");
    EXPECT_EQ(decimal_text(-0.04, 1), "0.0");
    EXPECT_EQ(decimal_text(-0.0, 0), "0");
    EXPECT_EQ(signed_text(12.0, 0), "+12");
    EXPECT_EQ(signed_text(-7.25, 1), "-7.2");
    EXPECT_EQ(signed_text(-7.0, 0, true), "\u22127");
    EXPECT_EQ(signed_text(-0.2, 0), "0");
    EXPECT_EQ(signed_text(0.2, 0), "0");
}

TEST(NumberText, WhatIsWrittenReadsBack) {
    for (const double value : {-1234.5, -0.1, 0.0, 0.1, 3.14, 99999.9}) {
        for (const bool typographic : {false, true})
            EXPECT_NEAR(parse_decimal(signed_text(value, 3, typographic)).value(), value, 5e-4);
    }
    const double huge = std::numeric_limits<double>::max();
    EXPECT_DOUBLE_EQ(parse_decimal(decimal_text(huge, 0)).value(), huge);
}

}  // namespace
}  // namespace lowledger::units
