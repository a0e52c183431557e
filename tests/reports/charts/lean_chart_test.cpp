#include "reports/charts/lean_chart.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <random>

#include "model/units/refusal.h"
#include "tests/reports/charts/sample_charts.h"
#include "tests/reports/recorded.h"

namespace lowledger::charts {
namespace {

using canvas::Page;
using units::Cents;
using units::Millimetres;

const canvas::Faces& faces() {
    static const canvas::Faces one;
    return one;
}

const engraving::Engraver& engraver() {
    static const engraving::Engraver one(faces(), Millimetres(1.5));
    return one;
}

canvas::Box liked_box(const LeanChart& chart, double width) {
    return {Millimetres(15.0), Millimetres(20.0), Millimetres(width),
            lean_chart_height(engraver(), chart, Millimetres(width))};
}

Page drawn(const LeanChart& chart, double width) {
    Page page;
    draw_lean_chart(page, engraver(), chart, liked_box(chart, width));
    return page;
}

LeanChart of(std::initializer_list<double> leans) {
    LeanChart chart;
    int midi = 34;
    for (const double lean : leans) {
        LeanNote note;
        note.spelling = units::spell(units::Pitch(midi));
        note.fingering = "0";
        note.after = Cents(lean);
        chart.notes.push_back(note);
        midi += 5;
    }
    return chart;
}

TEST(LeanChart, TheScaleHoldsTheBarsAndIsNeverLessThan20) {
    EXPECT_EQ(range_of(of({})), Cents(20.0));
    EXPECT_EQ(range_of(of({3, -4})), Cents(20.0));
    EXPECT_EQ(range_of(of({3, -21})), Cents(30.0));
    EXPECT_EQ(range_of(of({40})), Cents(40.0));
    EXPECT_EQ(range_of(of({88})), Cents(50.0));
    LeanChart chart = of({88});
    chart.range = Cents(25.0);
    EXPECT_EQ(range_of(chart), Cents(25.0));
}

TEST(LeanChart, BarsAreAsHighAsTheLeanAndPointItsWay) {
    const LeanChart chart = of({5, -10, 20, -15});
    const Page page = drawn(chart, 120.0);
    const auto sharp = canvas::shapes_named(page, "bar.sharp");
    const auto flat = canvas::shapes_named(page, "bar.flat");
    ASSERT_EQ(sharp.size(), 2U);
    ASSERT_EQ(flat.size(), 2U);
    const double a_cent = extent(sharp[0].steps).height.value() / 5.0;
    EXPECT_NEAR(extent(sharp[1].steps).height.value() / a_cent, 20.0, 1e-6);
    EXPECT_NEAR(extent(flat[0].steps).height.value() / a_cent, 10.0, 1e-6);
    EXPECT_NEAR(extent(flat[1].steps).height.value() / a_cent, 15.0, 1e-6);
    const double zero = extent(sharp[0].steps).bottom().value();
    for (const auto& bar : sharp)
        EXPECT_NEAR(extent(bar.steps).bottom().value(), zero, 1e-6);
    for (const auto& bar : flat)
        EXPECT_NEAR(extent(bar.steps).top.value(), zero, 1e-6);
    const canvas::Box band = extent(canvas::shapes_named(page, "tolerance").at(0).steps);
    EXPECT_NEAR(band.height.value() / a_cent, 20.0, 1e-6) << "10 cents each way";
    EXPECT_NEAR((band.top + band.height / 2.0).value(), zero, 1e-6);
}

TEST(LeanChart, EachBarStandsOverItsNote) {
    const Page page = drawn(of({5, 10, 20, 15}), 120.0);
    const auto bars = canvas::shapes_named(page, "bar.sharp");
    const auto heads = canvas::shapes_named(page, "noteheadWhole");
    ASSERT_EQ(bars.size(), heads.size());
    for (std::size_t i = 0; i < bars.size(); ++i) {
        const canvas::Box bar = extent(bars[i].steps);
        const canvas::Box head = extent(heads[i].steps);
        EXPECT_NEAR((bar.left + bar.width / 2.0).value(), (head.left + head.width / 2.0).value(), 0.02);
    }
}

TEST(LeanChart, WhatIsBeyondTheScaleIsCutAndItsNumberStands) {
    const Page page = drawn(of({88, -63, 10}), 120.0);
    const auto sharp = canvas::shapes_named(page, "bar.sharp");
    const double full = extent(sharp.at(0).steps).height.value();
    EXPECT_NEAR(full / extent(sharp.at(1).steps).height.value(), 5.0, 1e-6) << "50 to 10";
    const auto written = canvas::texts(page);
    const auto has = [&](const char* text) {
        return std::any_of(written.begin(), written.end(),
                           [&](const canvas::Text& t) { return t.text == text; });
    };
    EXPECT_TRUE(has("+88"));
    EXPECT_TRUE(has("\u221263"));
    EXPECT_FALSE(has("+10"));
}

TEST(LeanChart, SixteenNotesFitOneSystemOfAHandout) {
    LeanChart chart = full_range_chart();
    chart.notes.resize(16);
    EXPECT_EQ(systems_needed(engraver(), chart, Millimetres(120.0)), 1U);
}

TEST(LeanChart, ANarrowOneTakesMoreSystemsAndKeepsEveryNote) {
    const LeanChart chart = full_range_chart();
    for (const double width : {60.0, 90.0, 120.0, 180.0}) {
        const std::size_t systems = systems_needed(engraver(), chart, Millimetres(width));
        const Page page = drawn(chart, width);
        EXPECT_EQ(canvas::shapes_named(page, "fClef").size(), systems);
        EXPECT_EQ(canvas::shapes_named(page, "noteheadWhole").size(), chart.notes.size());
    }
    EXPECT_GE(systems_needed(engraver(), chart, Millimetres(90.0)), 2U);
}

TEST(LeanChart, RandomOnesStayInTheirBoxAndNoTextTouchesAnother) {
    std::mt19937 random(11);
    const auto pick = [&](int from, int to) {
        return from + static_cast<int>(random() % static_cast<unsigned>(to - from + 1));
    };
    for (int i = 0; i < 200; ++i) {
        LeanChart chart;
        chart.words = {"before", "after", "cents"};
        chart.clef = static_cast<horns::Clef>(pick(0, 3));
        const int count = pick(1, 24);
        for (int n = 0; n < count; ++n) {
            LeanNote note;
            note.spelling = units::spell(units::Pitch(24 + n * 2));
            note.fingering = pick(0, 1) == 0 ? "0" : "1234";
            if (pick(0, 4) > 0) note.before = Cents(pick(-90, 90));
            if (pick(0, 4) > 0) note.after = Cents(pick(-60, 60));
            if (pick(0, 2) > 0) note.spread = Cents(pick(0, 20));
            note.alternate = pick(0, 3) == 0;
            note.measured = pick(0, 3) > 0;
            chart.notes.push_back(note);
        }
        const double width = pick(70, 190);
        const canvas::Box box = liked_box(chart, width);
        Page page;
        draw_lean_chart(page, engraver(), chart, box);
        for (const canvas::Item& item : page.items)
            ASSERT_TRUE(canvas::within(canvas::ink_box(item), box)) << i << "\n"
                                                                    << canvas::recorded_text({{}, {item}});
        const auto written = canvas::texts(page);
        for (std::size_t a = 0; a < written.size(); ++a) {
            for (std::size_t b = a + 1; b < written.size(); ++b) {
                ASSERT_FALSE(canvas::overlap(canvas::ink_box(written[a]), canvas::ink_box(written[b])))
                    << i << ": " << written[a].text << ", " << written[b].text;
            }
        }
    }
}

TEST(LeanChart, ABoxNarrowerThanOneColumnIsRefused) {
    Page page;
    EXPECT_THROW(draw_lean_chart(page, engraver(), of({3}), {{}, {}, Millimetres(8.0), Millimetres(40.0)}),
                 units::Refusal);
    EXPECT_TRUE(page.items.empty());
}

TEST(LeanChart, WithoutNotesItIsAnEmptyStaff) {
    const Page page = drawn(of({}), 100.0);
    EXPECT_EQ(canvas::shapes_named(page, "fClef").size(), 1U);
}

TEST(LeanChart, AgreesWithTheStoredPage) {
    Page page{{Millimetres(150.0), Millimetres(100.0)}, {}};
    const LeanChart chart = handout_chart();
    draw_lean_chart(page, engraver(), chart,
                    {Millimetres(10.0), Millimetres(10.0), Millimetres(120.0),
                     lean_chart_height(engraver(), chart, Millimetres(120.0))});
    EXPECT_EQ(canvas::difference_from_golden(page, "lean-chart"), "");
}

}  // namespace
}  // namespace lowledger::charts
