// Amounts and times as a teacher types them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "model/studio/money.h"
#include "model/studio/time_of_day.h"
#include "model/units/refusal.h"

namespace lowledger::studio {
namespace {

TEST(TypedMoney, IsUnderstoodWithPointOrComma) {
    EXPECT_EQ(parse_money("12"), (Money{1200, ""}));
    EXPECT_EQ(parse_money("12.5 EUR"), (Money{1250, "EUR"}));
    EXPECT_EQ(parse_money(" 12,05 ", "CHF"), (Money{1205, "CHF"}));
    EXPECT_EQ(parse_money("-3.20", "$"), (Money{-320, "$"}));
    EXPECT_EQ(parse_money("0.05"), (Money{5, ""}));
    EXPECT_EQ(parse_money("999999999.99"), (Money{99999999999, ""}));
    for (const char* wrong :
         {"", "EUR", "1.234", "1.", "1.234,50", "12 5", "1e3", "1000000000", "--1", "EUR 12"})
        EXPECT_EQ(parse_money(wrong), std::nullopt) << wrong;
}

TEST(TypedMoney, ReadsBackAsItIsWritten) {
    for (const Money& money : {Money{0, ""}, Money{5, "EUR"}, Money{-5, "EUR"}, Money{123456, "$"}})
        EXPECT_EQ(parse_money(text(money)), money) << text(money);
    EXPECT_EQ(text({123450, "EUR"}), "1234.50 EUR");
    EXPECT_EQ(text({-5, ""}), "-0.05");
}

TEST(TypedTime, IsUnderstoodInTheUsualForms) {
    EXPECT_EQ(TimeOfDay::parse("16:05"), TimeOfDay(16, 5));
    EXPECT_EQ(TimeOfDay::parse("9.30"), TimeOfDay(9, 30));
    EXPECT_EQ(TimeOfDay::parse("1605"), TimeOfDay(16, 5));
    EXPECT_EQ(TimeOfDay::parse("905"), TimeOfDay(9, 5));
    EXPECT_EQ(TimeOfDay::parse("16"), TimeOfDay(16, 0));
    EXPECT_EQ(TimeOfDay::parse("9"), TimeOfDay(9, 0));
    EXPECT_EQ(TimeOfDay::parse("0:00"), TimeOfDay());
    for (const char* wrong :
         {"", ":", "24:00", "16:60", "16:5", "99", "1660", "-1", "16:05h", "4 pm", "16:005"})
        EXPECT_EQ(TimeOfDay::parse(wrong), std::nullopt) << wrong;
}

TEST(TypedTime, CountsMinutes) {
    EXPECT_EQ(TimeOfDay(16, 5).minutes(), 965);
    EXPECT_EQ(TimeOfDay::from_minutes(965).text(), "16:05");
    EXPECT_EQ(TimeOfDay(16, 5) - TimeOfDay(15, 30), std::chrono::minutes(35));
    EXPECT_LT(TimeOfDay(9, 5), TimeOfDay(16, 0));
    EXPECT_THROW(TimeOfDay(24, 0), units::Refusal);
    EXPECT_THROW(TimeOfDay::from_minutes(1440), units::Refusal);
    EXPECT_THROW(TimeOfDay::from_minutes(-1), units::Refusal);
}

}  // namespace
}  // namespace lowledger::studio
