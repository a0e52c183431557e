#include <gtest/gtest.h>

#include "model/acoustics/tube.h"
#include "tests/published/table.h"

namespace lowledger::published {
namespace {

using acoustics::SlideTube;
using units::Millimetres;

Millimetres open_of(const Row& row) {
    return acoustics::open_length(
        units::equal_tempered(units::parse_pitch(row.text("open_fundamental")).value()));
}

/// Lengths derived from c/(2 f1) at 20 C, 50 % RH.
TEST(PublishedLength, EffectiveLengths) {
    for (const Row& row : table("lengths_and_pull.csv")) {
        EXPECT_NEAR(open_of(row).value() / 1000.0, row.number("L_eff_m_20C_50RH"), 5e-5) << row.place();
        EXPECT_NEAR(open_of(row).value() / 304.8, row.number("L_eff_ft"), 5e-4) << row.place();
    }
}

/// The feet that horns are called by (Matteoli et al., Acta Acustica 6, 32, 2022, Table 1: equivalent cone
/// lengths) lie within a twelfth of the effective length.
TEST(PublishedLength, QuotedFeetAreNear) {
    for (const Row& row : table("lengths_and_pull.csv"))
        EXPECT_NEAR(open_of(row).value() / 304.8 / row.number("quoted_feet"), 1.08, 0.04) << row.place();
}

/// Derived from -1200 log2(1 + 2d/L).
TEST(PublishedLength, WhatTenMillimetresDo) {
    const SlideTube main_slide;
    for (const Row& row : table("lengths_and_pull.csv")) {
        if (row.text("cents_flat_for_10mm_pull").empty()) continue;
        const Millimetres open = open_of(row);
        EXPECT_NEAR(-acoustics::pull_slope(main_slide, {}, open).value(),
                    row.number("cents_per_mm_pull_small"), 5e-5)
            << row.place();
        EXPECT_NEAR(-acoustics::change_by_tube(open, Millimetres(20.0)).value(),
                    row.number("cents_flat_for_10mm_pull"), 5e-5)
            << row.place();
        EXPECT_NEAR(acoustics::tube_for_change(open, units::Cents(-10.0)).value() / 2.0,
                    row.number("mm_pull_for_10_cents"), 5e-4)
            << row.place();
    }
}

}  // namespace
}  // namespace lowledger::published
