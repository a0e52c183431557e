#include "reports/charts/sheet_chart.h"

#include <gtest/gtest.h>

#include "model/units/refusal.h"
#include "tests/reports/charts/sample_charts.h"
#include "tests/reports/recorded.h"

namespace lowledger::charts {
namespace {

using canvas::Box;
using canvas::Page;
using units::Millimetres;

class Sheets : public testing::Test {
  protected:
    static const canvas::Faces& faces() {
        static const canvas::Faces one;
        return one;
    }
    engraving::Engraver engraver{faces(), Millimetres(1.5)};
    Box box{Millimetres(10.0), Millimetres(10.0), Millimetres(180.0), Millimetres(90.0)};

    static std::size_t count(const SheetChart& chart, std::size_t sheet) {
        std::size_t played = 0;
        for (const auto& lean : chart.sheets[sheet].leans)
            played += lean ? 1 : 0;
        return played;
    }
};

TEST_F(Sheets, EachValueHasItsDotAndTimeGoesToTheRight) {
    const SheetChart chart = five_sheets();
    Page page;
    draw_sheets_over_time(page, engraver, chart, box);
    // Each with one in the legend, where the first, the last but one and the last are named.
    EXPECT_EQ(canvas::shapes_named(page, "dot.newest").size(), count(chart, 4) + 1);
    EXPECT_EQ(canvas::shapes_named(page, "dot.ground").size(), count(chart, 3) + 1);
    EXPECT_EQ(canvas::shapes_named(page, "dot.older").size(),
              count(chart, 0) + count(chart, 1) + count(chart, 2) + 1);
    const Box newest = canvas::ink_box(canvas::shapes_named(page, "dot.newest")[1]);
    const Box ring = canvas::ink_box(canvas::shapes_named(page, "dot.ground")[1]);
    EXPECT_GT(newest.left, ring.left);
    for (const canvas::Item& item : page.items)
        EXPECT_TRUE(canvas::within(canvas::ink_box(item), box));
}

TEST_F(Sheets, ADotStandsAtItsCents) {
    SheetChart chart = two_sheets();
    for (SheetLeans& sheet : chart.sheets)
        sheet.leans.assign(chart.notes.size(), std::nullopt);
    chart.sheets[1].leans[0] = units::Cents(0.0);
    chart.sheets[1].leans[1] = units::Cents(10.0);
    chart.sheets[1].leans[2] = units::Cents(-10.0);
    Page page;
    draw_sheets_over_time(page, engraver, chart, box);
    const auto dots = canvas::shapes_named(page, "dot.newest");
    ASSERT_EQ(dots.size(), 4U);
    const auto y = [&](std::size_t i) { return canvas::ink_box(dots[i]).top.value(); };
    EXPECT_GT(y(1), y(2));
    EXPECT_NEAR(y(1) - y(2), y(3) - y(1), 1e-9);
}

TEST_F(Sheets, TwoSheetsStandSideBySide) {
    const SheetChart chart = two_sheets();
    Page page;
    draw_two_sheets(page, engraver, chart, box);
    EXPECT_EQ(canvas::shapes_named(page, "bar.second").size(), count(chart, 1) + 1);
    std::vector<Box> bars;
    for (const canvas::Item& item : page.items) {
        const bool hollow = std::holds_alternative<canvas::Outline>(item);
        const auto* shape = std::get_if<canvas::Shape>(&item);
        if (hollow || (shape != nullptr && shape->name == "bar.second"))
            bars.push_back(canvas::ink_box(item));
    }
    for (std::size_t a = 0; a < bars.size(); ++a) {
        for (std::size_t b = a + 1; b < bars.size(); ++b)
            EXPECT_FALSE(canvas::overlap(bars[a], bars[b]));
    }
}

TEST_F(Sheets, WhatDoesNotFitTogetherIsRefused) {
    Page page;
    SheetChart chart = five_sheets();
    EXPECT_THROW(draw_two_sheets(page, engraver, chart, box), units::Refusal);
    chart.sheets[2].leans.pop_back();
    EXPECT_THROW(draw_sheets_over_time(page, engraver, chart, box), units::Refusal);
    Box narrow = box;
    narrow.width = Millimetres(8.0);
    EXPECT_THROW(draw_two_sheets(page, engraver, two_sheets(), narrow), units::Refusal);
    EXPECT_TRUE(page.items.empty());
}

TEST_F(Sheets, AgreeWithTheStoredPage) {
    Page page{{Millimetres(200.0), Millimetres(110.0)}, {}};
    draw_sheets_over_time(page, engraver, five_sheets(), box);
    EXPECT_EQ(canvas::difference_from_golden(page, "sheets-over-time"), "");
}

}  // namespace
}  // namespace lowledger::charts
