#include "app/batch/sample_random.h"

#include <cmath>
#include <gtest/gtest.h>

namespace lowledger::batch {
namespace {

TEST(SampleRandom, SameSeedAndStreamSameNumbers) {
    SampleRandom a(2, "horn T-1");
    SampleRandom b(2, "horn T-1");
    SampleRandom other_stream(2, "horn T-2");
    SampleRandom other_seed(3, "horn T-1");
    const auto first = a.next();
    EXPECT_EQ(first, b.next());
    EXPECT_NE(first, other_stream.next());
    EXPECT_NE(first, other_seed.next());
}

// The moments of a normal distribution; bounds are five standard errors of 100,000 draws.
TEST(SampleRandom, NormalHasMeanZeroVarianceOneAndNormalTails) {
    SampleRandom random(2, "moments");
    const int draws = 100000;
    double sum = 0.0;
    double squares = 0.0;
    int beyond_two = 0;
    for (int i = 0; i < draws; ++i) {
        const double x = random.normal();
        EXPECT_LE(std::abs(x), 6.0);
        sum += x;
        squares += x * x;
        beyond_two += std::abs(x) > 1.96 ? 1 : 0;
    }
    EXPECT_NEAR(sum / draws, 0.0, 5.0 / std::sqrt(draws));
    EXPECT_NEAR(squares / draws, 1.0, 5.0 * std::sqrt(2.0 / draws));
    EXPECT_NEAR(beyond_two / static_cast<double>(draws), 0.05, 0.005);
}

}  // namespace
}  // namespace lowledger::batch
