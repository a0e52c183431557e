#include "model/horns/hand_slide.h"

#include <gtest/gtest.h>

namespace lowledger::horns {
namespace {

TEST(HandSlide, AHornWithoutOneStaysWhereItIs) {
    const HornKind& kind = *find_kind(built_in_kinds(), "bbb-tuba-3");
    EXPECT_EQ(plain_position(kind, {}), units::Millimetres(0.0));
    EXPECT_TRUE(within_reach(kind, {}, units::Cents(50.0)));
}

}  // namespace
}  // namespace lowledger::horns
