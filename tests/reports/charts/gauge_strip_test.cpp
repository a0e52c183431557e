#include "reports/charts/gauge_strip.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <limits>

#include "model/units/refusal.h"
#include "tests/reports/recorded.h"

namespace lowledger::charts {
namespace {

using canvas::Page;
using units::Millimetres;

constexpr double exact = 0.01;

const canvas::Faces& faces() {
    static const canvas::Faces one;
    return one;
}

/// Distances of the upright lines of the page from `left`, in drawing order.
std::vector<double> uprights(const Page& page, Millimetres left) {
    std::vector<double> found;
    for (const canvas::Item& item : page.items) {
        const auto* line = std::get_if<canvas::Line>(&item);
        if (line != nullptr && line->from.x == line->to.x) found.push_back((line->from.x - left).value());
    }
    return found;
}

TEST(GaugeStrip, IsTrueToAHundredthOfAMillimetre) {
    const GaugeStrip strip{"main slide", "35 mm", Millimetres(35.0), Millimetres(70.0)};
    const Millimetres left(17.3);
    Page page;
    draw_gauge_strip(page, faces(), strip, {left, Millimetres(20.0)});
    const std::vector<double> lines = uprights(page, left);
    ASSERT_EQ(lines.size(), 71U) << "70 ticks and the mark";
    for (std::size_t i = 0; i < 70; ++i)
        EXPECT_NEAR(lines[i], static_cast<double>(i) + 1.0, exact);
    EXPECT_NEAR(lines[70], 35.0, exact);
    const auto frame = std::find_if(page.items.begin(), page.items.end(), [](const canvas::Item& item) {
        return std::holds_alternative<canvas::Outline>(item);
    });
    ASSERT_NE(frame, page.items.end());
    const canvas::Box box = extent(std::get<canvas::Outline>(*frame).steps);
    EXPECT_NEAR(box.left.value(), left.value(), exact);
    EXPECT_NEAR(box.width.value(), 70.0, exact) << "the cut edges are the scale's ends";
    const canvas::Box pointer = extent(canvas::shapes_named(page, "set.here").at(0).steps);
    EXPECT_NEAR((pointer.left + pointer.width / 2.0 - left).value(), 35.0, exact);
}

TEST(GaugeStrip, EverythingLiesOnTheStripAndNoTextOnAnotherOrOnTheMark) {
    for (const double travel : {8.0, 15.0, 25.0, 50.0, 70.0, 90.0}) {
        for (int halves = 0; halves <= static_cast<int>(travel * 2.0); halves += 5) {
            const double position = halves / 2.0;
            const GaugeStrip strip{"second valve slide", "12.5 mm", Millimetres(position),
                                   Millimetres(travel)};
            Page page;
            draw_gauge_strip(page, faces(), strip, {Millimetres(5.0), Millimetres(5.0)});
            const canvas::Size size = gauge_strip_size(faces(), strip);
            const canvas::Box outer{Millimetres(5.0), Millimetres(5.0), size.width, size.height};
            const auto written = canvas::texts(page);
            for (std::size_t a = 0; a < written.size(); ++a) {
                const canvas::Box box = canvas::ink_box(written[a]);
                EXPECT_TRUE(canvas::within(box, outer)) << written[a].text << " at " << position;
                const Millimetres mark = Millimetres(5.0) + strip.position;
                EXPECT_TRUE(box.left > mark || box.right() < mark) << written[a].text << " at " << position;
                for (std::size_t b = a + 1; b < written.size(); ++b)
                    EXPECT_FALSE(canvas::overlap(box, canvas::ink_box(written[b])));
            }
        }
    }
}

TEST(GaugeStrip, APositionBeyondItsTravelIsRefused) {
    Page page;
    const auto draw = [&](double position, double travel) {
        draw_gauge_strip(page, faces(), {"main slide", "", Millimetres(position), Millimetres(travel)}, {});
    };
    EXPECT_THROW(draw(-1.0, 70.0), units::Refusal);
    EXPECT_THROW(draw(71.0, 70.0), units::Refusal);
    EXPECT_THROW(draw(std::nan(""), 70.0), units::Refusal);
    EXPECT_THROW(draw(5.0, std::numeric_limits<double>::infinity()), units::Refusal);
    EXPECT_TRUE(page.items.empty());
}

TEST(PrintCheck, TheLineIs50MmLong) {
    Page page;
    draw_print_check(page, faces(), "This line is 50 mm long.", {Millimetres(15.0), Millimetres(20.0)});
    const auto& line = std::get<canvas::Line>(page.items.at(0));
    EXPECT_NEAR((line.to.x - line.from.x).value(), 50.0, exact);
    EXPECT_EQ(uprights(page, Millimetres(15.0)), (std::vector<double>{0.0, 50.0}));
}

TEST(GaugeStrip, AgreesWithTheStoredPage) {
    Page page{{Millimetres(100.0), Millimetres(60.0)}, {}};
    draw_gauge_strip(page, faces(), {"main slide", "35 mm", Millimetres(35.0), Millimetres(70.0)},
                     {Millimetres(5.0), Millimetres(5.0)});
    draw_gauge_strip(page, faces(), {"second valve slide", "5 mm", Millimetres(5.0), Millimetres(25.0)},
                     {Millimetres(5.0), Millimetres(25.0)});
    draw_print_check(page, faces(), "This line is 50 mm long.", {Millimetres(5.0), Millimetres(45.0)});
    EXPECT_EQ(canvas::difference_from_golden(page, "gauge-strips"), "");
}

}  // namespace
}  // namespace lowledger::charts
