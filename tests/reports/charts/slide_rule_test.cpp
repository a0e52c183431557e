#include "reports/charts/slide_rule.h"

#include <gtest/gtest.h>
#include <random>

#include "model/units/refusal.h"
#include "tests/reports/recorded.h"

namespace lowledger::charts {
namespace {

using canvas::Page;
using units::Millimetres;

const canvas::Faces& faces() {
    static const canvas::Faces one;
    return one;
}

const canvas::Box box{Millimetres(20.0), Millimetres(30.0), Millimetres(80.0), slide_rule_height()};
const SlideRule usual{Millimetres(20.0), Millimetres(35.0), Millimetres(15.0), Millimetres(5.0),
                      Millimetres(70.0)};

Page drawn(const SlideRule& rule) {
    Page page;
    draw_slide_rule(page, faces(), rule, box);
    return page;
}

canvas::Box only(const Page& page, std::string_view name) {
    const auto shapes = canvas::shapes_named(page, name);
    EXPECT_EQ(shapes.size(), 1U) << name;
    return extent(shapes.at(0).steps);
}

Millimetres middle(const canvas::Box& b) {
    return b.left + b.width / 2.0;
}

TEST(SlideRule, MarksStandAtTheirPlaceOnTheScale) {
    const Page page = drawn(usual);
    const Millimetres start = x_on_rule(usual, box, Millimetres(0.0));
    const Millimetres end = x_on_rule(usual, box, Millimetres(70.0));
    EXPECT_NEAR((middle(only(page, "now")) - start) / (end - start), 20.0 / 70.0, 1e-6);
    EXPECT_NEAR((middle(only(page, "recommended")) - start) / (end - start), 0.5, 1e-6);
    EXPECT_NEAR(only(page, "stop").left.value(), end.value(), 1e-6);
    EXPECT_NEAR(only(page, "sureness").width / (end - start), 30.0 / 70.0, 1e-6);
}

TEST(SlideRule, WhatIsNotKnownIsNotDrawn) {
    SlideRule rule = usual;
    rule.now.reset();
    EXPECT_TRUE(canvas::shapes_named(drawn(rule), "now").empty());
    rule = usual;
    rule.recommended.reset();
    const Page page = drawn(rule);
    EXPECT_TRUE(canvas::shapes_named(page, "recommended").empty());
    EXPECT_TRUE(canvas::shapes_named(page, "sureness").empty());
}

TEST(SlideRule, NumbersNeverTouchAndStayInTheBox) {
    std::mt19937 random(7);
    const auto pick = [&](int to) {
        return Millimetres(static_cast<double>(random() % (2U * static_cast<unsigned>(to) + 1U)) / 2.0);
    };
    for (int i = 0; i < 500; ++i) {
        SlideRule rule;
        rule.travel = pick(120) + Millimetres(4.0);
        const int whole = static_cast<int>(rule.travel.value());
        rule.now = pick(whole);
        rule.recommended = pick(whole);
        rule.half_width = pick(40);
        rule.least = pick(5);
        const Page page = drawn(rule);
        const auto written = canvas::texts(page);
        ASSERT_GE(written.size(), 2U);
        for (std::size_t a = 0; a < written.size(); ++a) {
            const canvas::Box one = canvas::ink_box(written[a]);
            ASSERT_TRUE(canvas::within(one, box)) << i << ": " << written[a].text;
            for (std::size_t b = a + 1; b < written.size(); ++b) {
                ASSERT_FALSE(canvas::overlap(one, canvas::ink_box(written[b])))
                    << i << ": " << written[a].text << ", " << written[b].text;
            }
            for (const char* mark : {"now", "recommended"})
                ASSERT_FALSE(canvas::overlap(one, only(page, mark))) << i << ": " << written[a].text;
        }
        for (const canvas::Item& item : page.items)
            ASSERT_TRUE(canvas::within(canvas::ink_box(item), box)) << i;
    }
}

TEST(SlideRule, WithoutTravelItIsRefused) {
    SlideRule rule = usual;
    rule.travel = Millimetres(0.0);
    Page page;
    EXPECT_THROW(draw_slide_rule(page, faces(), rule, box), units::Refusal);
}

TEST(SlideRule, AgreesWithTheStoredPage) {
    Page page{{Millimetres(120.0), Millimetres(60.0)}, {}};
    draw_slide_rule(page, faces(), usual, box);
    EXPECT_EQ(canvas::difference_from_golden(page, "slide-rule"), "");
}

}  // namespace
}  // namespace lowledger::charts
