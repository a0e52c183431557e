#pragma once

#include <cstdint>
#include <initializer_list>

namespace lowledger::truth {

/// Numbers drawn by name: the same key gives the same number whatever was drawn before, so that two ways of
/// tuning meet the same horn, the same player and the same luck.
class Draw {
  public:
    explicit Draw(std::uint64_t seed) : seed_(seed) {}
    using Key = std::initializer_list<std::int64_t>;

    /// Between 0 and 1.
    [[nodiscard]] double part(Key key) const;
    [[nodiscard]] double between(double low, double high, Key key) const;
    [[nodiscard]] int whole(int low, int high, Key key) const;
    /// Of the standard normal distribution (Box and Muller 1958).
    [[nodiscard]] double normal(Key key) const;

  private:
    [[nodiscard]] std::uint64_t bits(Key key, std::uint64_t more) const;
    std::uint64_t seed_;
};

}  // namespace lowledger::truth
