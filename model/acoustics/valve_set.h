#pragma once

#include <compare>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lowledger::acoustics {

/// Which valves are down; valves are numbered from 1 to 8.
class ValveSet {
  public:
    constexpr ValveSet() = default;
    constexpr ValveSet(std::initializer_list<int> valves) {
        for (const int valve : valves)
            *this = with(valve);
    }

    [[nodiscard]] constexpr bool empty() const { return bits_ == 0; }
    [[nodiscard]] constexpr bool contains(int valve) const { return (bits_ & bit(valve)) != 0; }
    /// True when every valve of `other` is down here too.
    [[nodiscard]] constexpr bool includes(ValveSet other) const {
        return (bits_ & other.bits_) == other.bits_;
    }
    [[nodiscard]] constexpr ValveSet with(int valve) const { return ValveSet(bits_ | bit(valve)); }
    [[nodiscard]] constexpr ValveSet without(int valve) const { return ValveSet(bits_ & ~bit(valve)); }
    [[nodiscard]] std::vector<int> valves() const;
    [[nodiscard]] int count() const;
    constexpr auto operator<=>(const ValveSet&) const = default;

    /// "0" for none, else the numbers in order: "124".
    [[nodiscard]] std::string text() const;
    /// Reads `text()`'s form ("open" is not read here); each valve once, in any order. Empty if it is none.
    static std::optional<ValveSet> parse(std::string_view text);

  private:
    constexpr explicit ValveSet(unsigned bits) : bits_(static_cast<std::uint8_t>(bits)) {}
    static constexpr unsigned bit(int valve) { return 1U << static_cast<unsigned>(valve - 1); }
    std::uint8_t bits_ = 0;
};

}  // namespace lowledger::acoustics
