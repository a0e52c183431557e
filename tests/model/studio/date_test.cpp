#include "model/studio/date.h"

#include <chrono>
#include <gtest/gtest.h>

#include "model/units/refusal.h"

namespace lowledger::studio {
namespace {

using units::Refusal;

// The independent reference is the C++20 calendar of the standard library (proleptic Gregorian, ISO
// weekdays).
TEST(Date, EveryDayAgreesWithTheStandardLibrarysCalendar) {
    Date date(1900, 1, 1);
    const Date first = date;
    std::chrono::sys_days reference = std::chrono::year(1900) / 1 / 1;
    const std::chrono::sys_days last = std::chrono::year(2199) / 12 / 31;
    for (int passed = 0;; ++passed) {
        const std::chrono::year_month_day expected(reference);
        ASSERT_EQ(date.year(), int(expected.year()));
        ASSERT_EQ(date.month(), int(unsigned(expected.month())));
        ASSERT_EQ(date.day(), int(unsigned(expected.day())));
        ASSERT_EQ(date.weekday(), int(std::chrono::weekday(reference).iso_encoding()));
        ASSERT_EQ(date - first, passed);
        ASSERT_EQ(Date::parse_iso(date.iso()), date);
        ASSERT_EQ(Date(date.year(), date.month(), date.day()), date);
        if (reference == last) break;
        date = date + 1;
        reference += std::chrono::days(1);
    }
}

TEST(Date, DatesThatDoNotExistAreRefused) {
    EXPECT_THROW(Date(2026, 2, 29), Refusal);
    EXPECT_NO_THROW(Date(2024, 2, 29));
    EXPECT_THROW(Date(2100, 2, 29), Refusal);
    EXPECT_NO_THROW(Date(2000, 2, 29));
    EXPECT_THROW(Date(2026, 4, 31), Refusal);
    EXPECT_THROW(Date(2026, 13, 1), Refusal);
    EXPECT_THROW(Date(2026, 0, 1), Refusal);
    EXPECT_THROW(Date(2026, 1, 0), Refusal);
    EXPECT_THROW(Date(1899, 12, 31), Refusal);
    EXPECT_THROW(Date(2200, 1, 1), Refusal);
}

TEST(Date, TheRefusalSaysHowManyDaysTheMonthHas) {
    try {
        Date(2026, 2, 30);
        FAIL();
    } catch (const Refusal& refusal) {
        EXPECT_STREQ(refusal.what(), "2026-02-30 is not a date: February 2026 has 28 days.");
    }
}

TEST(Date, OnlyTheIsoFormIsRead) {
    EXPECT_EQ(Date::parse_iso("2026-11-25"), Date(2026, 11, 25));
    for (const char* text :
         {"", "2026-11-2", "2026-11-255", "2026/11/25", "26-11-2500", "2026-02-30", "2026-1-125",
          "+026-11-25", "2026-11-25 ", "abcd-ef-gh", "1899-12-31", "2200-01-01", "2026-00-10"})
        EXPECT_EQ(Date::parse_iso(text), std::nullopt) << text;
}

TEST(Date, DaysMayNotLeaveTheYearsThatAreKept) {
    EXPECT_EQ(Date(2199, 12, 30) + 1, Date(2199, 12, 31));
    EXPECT_THROW(Date(2199, 12, 31) + 1, Refusal);
    EXPECT_THROW(Date(1900, 1, 1) - 1, Refusal);
    EXPECT_THROW(Date(2026, 1, 1) + 2'000'000'000, Refusal);
}

TEST(Date, MonthsLaterKeepTheDayOrTakeTheLast) {
    EXPECT_EQ(months_later(Date(2026, 1, 31), 1), Date(2026, 2, 28));
    EXPECT_EQ(months_later(Date(2024, 1, 31), 1), Date(2024, 2, 29));
    EXPECT_EQ(months_later(Date(2026, 2, 28), 1), Date(2026, 3, 28));
    EXPECT_EQ(months_later(Date(2026, 1, 31), 2), Date(2026, 3, 31));
    EXPECT_EQ(months_later(Date(2024, 2, 29), 12), Date(2025, 2, 28));
    EXPECT_EQ(months_later(Date(2026, 11, 25), 0), Date(2026, 11, 25));
    EXPECT_EQ(months_later(Date(2026, 12, 15), 1), Date(2027, 1, 15));
    EXPECT_EQ(months_later(Date(2026, 1, 31), -2), Date(2025, 11, 30));
    EXPECT_EQ(months_later(Date(2026, 1, 15), -13), Date(2024, 12, 15));
    EXPECT_THROW(months_later(Date(2199, 12, 1), 1), Refusal);
    EXPECT_THROW(months_later(Date(1900, 1, 1), -1), Refusal);
}

}  // namespace
}  // namespace lowledger::studio
