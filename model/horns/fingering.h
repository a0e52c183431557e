#pragma once

#include <compare>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "model/acoustics/valve_set.h"

namespace lowledger::horns {

/// The furthest position of a hand slide.
inline constexpr int last_position = 7;

/// What the hands do for a note: valves down and, on a horn with a hand slide, the position (1 = closed).
struct Fingering {
    acoustics::ValveSet valves;
    /// 1..7 on a horn with a hand slide, 0 on one without.
    int position = 0;
    auto operator<=>(const Fingering&) const = default;
};

/// The form in files: "0", "124"; "p3", "p2+F" (a trombone's valves by the label that its kind gives them).
/// `labels[i]` is the label of valve i+1; valved horns have "1", "2", ...
std::string file_text(const Fingering& fingering, std::span<const std::string> labels = {});
/// Reads that form. Empty if it is none; whether the horn has those valves is for the kind to say
/// (`HornKind::allows`).
std::optional<Fingering> parse_fingering(std::string_view text, std::span<const std::string> labels = {});

}  // namespace lowledger::horns
