#include <cmath>
#include <gtest/gtest.h>
#include <map>
#include <optional>

#include "model/horns/chart.h"
#include "model/horns/hand_slide.h"
#include "model/units/hertz.h"
#include "model/units/inches.h"
#include "tests/published/table.h"

namespace lowledger::published {
namespace {

using horns::Fingering;
using horns::HornKind;

const HornKind& kind_of(std::string_view id) {
    const HornKind* kind = horns::find_kind(horns::built_in_kinds(), id);
    if (kind == nullptr) throw std::runtime_error("no kind " + std::string(id));
    return *kind;
}

/// The side of a trombone that the table names: a kind, and its valves.
struct Side {
    const char* kind;
    acoustics::ValveSet valves;
};
const std::map<std::string, Side> sides = {{"Bb", {"tenor-trombone", {}}},
                                           {"F-attachment", {"tenor-trombone-f", {1}}},
                                           {"Gb-valve", {"bass-trombone-gb", {2}}},
                                           {"F+Gb (D)", {"bass-trombone-dependent", {1, 2}}}};

/// The position of the open horn that stands as far out: 1 + 12 log2(1 + 2x/L).
double equivalent_position(const HornKind& kind, units::Millimetres out) {
    const auto open = horns::designed_length(kind, {{}, 1});
    return 1.0 + units::interval_of_ratio(1.0 + 2.0 * out / open).value() / 100.0;
}

/// Derived from L/2 (2^(k/12) - 1).
TEST(PublishedSlide, DistancesOfThePositions) {
    for (const Row& row : table("trombone_slide.csv")) {
        const Side& side = sides.at(row.text("side"));
        const HornKind& kind = kind_of(side.kind);
        const auto out = horns::plain_position(kind, {side.valves, row.integer("position_on_that_side")});
        EXPECT_NEAR(out.value() / 10.0, row.number("slide_from_closed_cm"), 6e-3) << row.place();
        EXPECT_NEAR(units::in_sixteenths(out) / 16.0, row.number("slide_from_closed_in"), 1.0 / 32.0 + 5e-3)
            << row.place();
        EXPECT_NEAR(equivalent_position(kind, out), row.number("equivalent_Bb_position"), 6e-4)
            << row.place();
    }
}

/// The F side's positions as positions of the open horn; 2.322 and 3.621 where the table gives them.
TEST(PublishedSlide, PositionsOfTheFSide) {
    const HornKind& kind = kind_of("tenor-trombone-f");
    int checked = 0;
    for (const Row& row : table("positions_trombone.csv")) {
        const std::string& cell = row.text("alternates");
        const auto number = cell.rfind(' ');
        if (!cell.starts_with("equiv.") || number == std::string::npos) continue;
        const int position = row.text("standard_fingering").back() - '0';
        const auto out = horns::plain_position(kind, {acoustics::ValveSet{1}, position});
        EXPECT_NEAR(equivalent_position(kind, out), std::stod(cell.substr(number + 1)), 6e-4) << row.place();
        ++checked;
    }
    EXPECT_GE(checked, 5);
}

/// Spacing grows by 5.95 % a step: derived from the twelfth root of two.
TEST(PublishedSlide, SpacingGrowsByASemitoneAStep) {
    const auto places = horns::slide_places(kind_of("tenor-trombone"), {});
    for (std::size_t i = 2; i < places.size(); ++i) {
        const double growth = (places[i].out - places[i - 1].out) / (places[i - 1].out - places[i - 2].out);
        EXPECT_NEAR(growth, 1.0595, 5e-5);
    }
}

/// In-line valves, derived: F with G-flat is 808.01 cents, D eight flat; F with G 729.49, E-flat 29.5 flat. A
/// dependent second tube is cut to land D exactly.
TEST(PublishedSlide, TwoValvesOfABassTrombone) {
    const auto lowering = [](const HornKind& kind) {
        const Fingering both{acoustics::ValveSet{1, 2}, 1};
        return units::interval_of_ratio(horns::designed_length(kind, both) /
                                        horns::designed_length(kind, {{}, 1}))
            .value();
    };
    EXPECT_NEAR(lowering(kind_of("bass-trombone-gb")), 808.01, 5e-3);
    EXPECT_NEAR(lowering(kind_of("bass-trombone-g")), 729.49, 5e-3);
    EXPECT_NEAR(lowering(kind_of("bass-trombone-dependent")), 800.0, 1e-9);
}

/// "Low B needs the valve pulled to E": pinocchiopedia.com, F attachment. With the valve in F it lies beyond
/// the slide.
TEST(PublishedSlide, LowBIsOutOfReachWithTheFValve) {
    const auto ways =
        horns::possible_fingerings(kind_of("tenor-trombone-f"), units::parse_pitch("B1").value());
    for (const auto& way : ways)
        EXPECT_FALSE(way.within_reach) << horns::file_text(way.fingering);
    HornKind pulled = kind_of("tenor-trombone-f");
    pulled.valves[0].built_for = units::Cents(600.0);
    const auto with_e = horns::possible_fingerings(pulled, units::parse_pitch("C2").value());
    EXPECT_TRUE(with_e.front().within_reach) << "pulled to E, low C is on the slide";
}

}  // namespace
}  // namespace lowledger::published
