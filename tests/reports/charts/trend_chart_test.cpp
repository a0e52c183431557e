#include "reports/charts/trend_chart.h"

#include <gtest/gtest.h>
#include <random>

#include "model/units/refusal.h"
#include "tests/reports/charts/sample_charts.h"
#include "tests/reports/recorded.h"

namespace lowledger::charts {
namespace {

using canvas::Box;
using canvas::Page;
using units::Millimetres;

const canvas::Faces& faces() {
    static const canvas::Faces one;
    return one;
}

const Box box{Millimetres(10.0), Millimetres(10.0), Millimetres(120.0), Millimetres(45.0)};

Page drawn(const TrendChart& chart) {
    Page page{{Millimetres(140.0), Millimetres(65.0)}, {}};
    draw_trend_chart(page, faces(), chart, box);
    return page;
}

Millimetres middle(const Box& b) {
    return b.left + b.width / 2.0;
}

TEST(TrendChart, DistancesAreAsTheDays) {
    const TrendChart chart = school_year();
    const auto points = canvas::shapes_named(drawn(chart), "point.first");
    ASSERT_EQ(points.size(), 9U);
    const auto x = [&](std::size_t i) { return middle(canvas::ink_box(points[i + 1])); };
    // 7 days, 3 days and 46 days.
    EXPECT_NEAR((x(1) - x(0)) / (x(2) - x(1)), 7.0 / 3.0, 1e-6);
    EXPECT_NEAR((x(3) - x(2)) / (x(1) - x(0)), 46.0 / 7.0, 1e-6);
}

TEST(TrendChart, HeightsAreAsTheValues) {
    const TrendChart chart = school_year();
    const auto points = canvas::shapes_named(drawn(chart), "point.first");
    const auto y = [&](std::size_t i) { return canvas::ink_box(points[i + 1]).top.value(); };
    EXPECT_NEAR((y(0) - y(7)) / (y(0) - y(1)), (100.0 - 36.0) / (43.0 - 36.0), 1e-6);
}

TEST(TrendChart, ALineIsBrokenWhereAValueIsMissing) {
    const Page page = drawn(school_year());
    std::size_t dashed = 0;
    for (const canvas::Item& item : page.items) {
        const auto* line = std::get_if<canvas::Outline>(&item);
        if (line != nullptr && line->stroke.dashed) ++dashed;
    }
    EXPECT_EQ(dashed, 2U);
}

TEST(TrendChart, TheScaleIsRound) {
    TrendChart chart;
    chart.most = 100.0;
    EXPECT_EQ(scale_of(chart), (std::vector<double>{0, 20, 40, 60, 80, 100}));
    chart.most.reset();
    for (const double most : {0.7, 1.0, 3.0, 7.0, 8.0, 19.0, 42.0, 71.0, 350.0, 999.0}) {
        chart.series = {{"", {{std::chrono::sys_days{}, "", most, ""}}}};
        const auto scale = scale_of(chart);
        EXPECT_GE(scale.back(), most);
        EXPECT_LT(scale.back(), most * 1.7) << most;
        EXPECT_GE(scale.size(), 4U) << most;
        EXPECT_LE(scale.size(), 8U) << most;
    }
}

TEST(TrendChart, NoTextLiesOverAnotherAndAllIsInTheBox) {
    std::mt19937 random(5);
    for (int round = 0; round < 200; ++round) {
        TrendChart chart = school_year();
        chart.series.resize(1);
        chart.series[0].points.clear();
        std::chrono::sys_days day{std::chrono::days{20000}};
        for (auto n = random() % 60; n > 0; --n) {
            day += std::chrono::days{static_cast<int>(random() % 20)};
            chart.series[0].points.push_back({day, "27 March", static_cast<double>(random() % 101),
                                              std::to_string(random() % 30) + " notes played"});
        }
        const Page page = drawn(chart);
        const auto texts = canvas::texts(page);
        for (std::size_t a = 0; a < texts.size(); ++a) {
            EXPECT_TRUE(canvas::within(canvas::ink_box(texts[a]), box)) << texts[a].text;
            for (std::size_t b = a + 1; b < texts.size(); ++b) {
                EXPECT_FALSE(canvas::overlap(canvas::ink_box(texts[a]), canvas::ink_box(texts[b])))
                    << round << ": " << texts[a].text << ", " << texts[b].text;
            }
        }
    }
}

TEST(TrendChart, WhatCannotBeChartedIsRefused) {
    Page page;
    const auto refused = [&](const TrendChart& chart, const Box& in) {
        EXPECT_THROW(draw_trend_chart(page, faces(), chart, in), units::Refusal);
    };
    TrendChart four = school_year();
    four.series.push_back(four.series[0]);
    refused(four, box);
    TrendChart late = school_year();
    std::swap(late.series[0].points[0], late.series[0].points[1]);
    refused(late, box);
    TrendChart over = school_year();
    over.series[0].points[0].value = 101.0;
    refused(over, box);
    TrendChart negative = school_year();
    negative.series[0].points[0].value = -1.0;
    refused(negative, box);
    Box low = box;
    low.height = Millimetres(15.0);
    refused(school_year(), low);
    EXPECT_TRUE(page.items.empty());
}

TEST(TrendChart, NothingYetIsAnEmptyScale) {
    const Page page = drawn({});
    EXPECT_FALSE(canvas::texts(page).empty());
}

TEST(TrendChart, AgreesWithTheStoredPage) {
    EXPECT_EQ(canvas::difference_from_golden(drawn(school_year()), "trend-chart"), "");
}

}  // namespace
}  // namespace lowledger::charts
