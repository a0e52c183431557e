#pragma once

#include <compare>
#include <cstdint>
#include <functional>

namespace lowledger::studio {

/// The number of a record in its table. Ids of different tables do not mix; 0 is a record not yet filed.
template <typename Record>
struct Id {
    std::int64_t number = 0;
    constexpr auto operator<=>(const Id&) const = default;
    [[nodiscard]] constexpr bool filed() const { return number != 0; }
};

using StudentId = Id<struct Student>;
using HornId = Id<struct Horn>;
using HornUseId = Id<struct HornUse>;
using SlidePositionId = Id<struct SlidePosition>;
using TuningSheetId = Id<struct TuningSheet>;
using GivenSettingsId = Id<struct GivenSettings>;

}  // namespace lowledger::studio

template <typename Record>
struct std::hash<lowledger::studio::Id<Record>> {
    std::size_t operator()(lowledger::studio::Id<Record> id) const noexcept {
        return std::hash<std::int64_t>{}(id.number);
    }
};
