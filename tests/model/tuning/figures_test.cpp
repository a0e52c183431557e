#include "model/tuning/figures.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <set>

#include "model/units/refusal.h"

namespace lowledger::tuning {
namespace {

std::string refusal(std::string_view toml) {
    try {
        read_figures(toml, "mine.toml");
    } catch (const units::Refusal& refusal) {
        return refusal.what();
    }
    return "not refused";
}

TEST(Figures, EveryOneHasItsMarkAndMeaning) {
    std::set<std::string> keys;
    for (const Figure& figure : figures().all) {
        EXPECT_FALSE(figure.meaning.empty()) << figure.key;
        EXPECT_TRUE(keys.insert(figure.key).second) << figure.key;
    }
    EXPECT_EQ(figures().all.front().key, "take.beginner");
    EXPECT_TRUE(keys.contains("cost_per_cent_moved"));
    EXPECT_TRUE(keys.contains("valve_tubes.4"));
}

TEST(Figures, BeginnersKnowLessAndAreAskedLess) {
    const Figures& f = figures();
    EXPECT_GT(f.beginner.take, f.advanced.take);
    EXPECT_GT(f.beginner.tolerance, f.advanced.tolerance);
    EXPECT_LT(f.beginner.lip_down, f.advanced.lip_down);
    EXPECT_EQ(&f.of(studio::Level::middle), &f.middle);
}

TEST(Figures, AMissingOrWrongFigureIsNamed) {
    EXPECT_THAT(refusal(""), testing::AllOf(testing::HasSubstr("mine.toml"), testing::HasSubstr("\"take\""),
                                            testing::HasSubstr("missing")));
    EXPECT_THAT(refusal("[take]\nvalues = [1, 2]\n"), testing::HasSubstr("three values"));
    EXPECT_THAT(refusal("[take]\nvalues = [1, 2, \"x\"]\n"), testing::HasSubstr("must be a number"));
    EXPECT_THAT(refusal("[take\n"), testing::HasSubstr("line 1"));
}

}  // namespace
}  // namespace lowledger::tuning
