#include "model/acoustics/valve_set.h"

#include <gtest/gtest.h>

namespace lowledger::acoustics {
namespace {

TEST(ValveSet, TextReadsBackInAnyOrder) {
    EXPECT_EQ(ValveSet{}.text(), "0");
    EXPECT_EQ((ValveSet{4, 1, 2}.text()), "124");
    EXPECT_EQ(ValveSet::parse("421"), (ValveSet{1, 2, 4}));
    EXPECT_EQ(ValveSet::parse("0"), ValveSet{});
    for (const char* text : {"", "9", "11", "1 2", "01", "a"})
        EXPECT_FALSE(ValveSet::parse(text)) << text;
}

TEST(ValveSet, KnowsWhatItHolds) {
    constexpr ValveSet down{1, 3};
    static_assert(down.contains(3) && !down.contains(2));
    static_assert(down.includes(ValveSet{1}) && !down.includes(ValveSet{1, 2}) && down.includes(ValveSet{}));
    EXPECT_EQ(down.count(), 2);
    EXPECT_EQ(down.valves(), (std::vector<int>{1, 3}));
    EXPECT_EQ(down.with(2).without(1), (ValveSet{2, 3}));
}

}  // namespace
}  // namespace lowledger::acoustics
