#pragma once

#include <cstdint>
#include <string_view>

namespace lowledger::batch {

/// A stream of numbers for the sample that is the same on every machine and in every library: integer
/// arithmetic (SplitMix64; Steele, Lea, Flood, OOPSLA 2014) and exact sums, no library function. Streams of
/// different names are independent, so that a student added to the sources changes no other.
class SampleRandom {
  public:
    SampleRandom(std::uint64_t seed, std::string_view stream);

    std::uint64_t next();
    /// From 0 up to 1, in steps of 2^-32.
    double uniform();
    /// Mean 0, variance 1, within 6: twelve uniforms less 6, near enough to normal for invented readings.
    double normal();

  private:
    std::uint64_t state_;
};

}  // namespace lowledger::batch
