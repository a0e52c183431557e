#include "tests/truth/draw.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace lowledger::truth {
namespace {

/// The finaliser of SplitMix64 (Steele, Lea and Flood 2014).
std::uint64_t mixed(std::uint64_t x) {
    x += 0x9e3779b97f4a7c15U;
    x = (x ^ (x >> 30U)) * 0xbf58476d1ce4e5b9U;
    x = (x ^ (x >> 27U)) * 0x94d049bb133111ebU;
    return x ^ (x >> 31U);
}

double as_part(std::uint64_t bits) {
    constexpr double steps = 9007199254740992.0;
    return (static_cast<double>(bits >> 11U) + 0.5) / steps;
}

}  // namespace

std::uint64_t Draw::bits(Key key, std::uint64_t more) const {
    std::uint64_t state = mixed(seed_);
    for (const std::int64_t part : key)
        state = mixed(state ^ static_cast<std::uint64_t>(part));
    return mixed(state ^ (more << 56U));
}

double Draw::part(Key key) const {
    return as_part(bits(key, 1));
}

double Draw::between(double low, double high, Key key) const {
    return low + part(key) * (high - low);
}

int Draw::whole(int low, int high, Key key) const {
    return std::min(high, low + static_cast<int>(part(key) * (high - low + 1)));
}

double Draw::normal(Key key) const {
    const double radius = std::sqrt(-2.0 * std::log(as_part(bits(key, 2))));
    return radius * std::cos(2.0 * std::numbers::pi * as_part(bits(key, 3)));
}

}  // namespace lowledger::truth
