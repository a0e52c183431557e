#pragma once

#include <optional>
#include <span>
#include <vector>

#include "model/acoustics/valve_set.h"
#include "model/units/hertz.h"
#include "model/units/pitch.h"
#include "model/units/quantity.h"

namespace lowledger::acoustics {

/// A tuning slide as tubing. It acts when `valve` is down, or always if that is empty (a main slide, a bit, a
/// shank).
struct SlideTube {
    std::optional<int> valve;
    /// Tube gained for each mm pulled: 2 for a slide with two legs, 1 for a single joint.
    double legs = 2.0;
    /// Effective length for each mm of tube, about 1: bore and taper.
    double bore = 1.0;
    /// Where the slide stands when the horn is in tune as designed.
    units::Millimetres designed{0.0};
    bool operator==(const SlideTube&) const = default;
};

/// A loop that only acts while all valves of `when` are down (compensating systems).
struct Loop {
    ValveSet when;
    units::Millimetres tube{0.0};
    bool operator==(const Loop&) const = default;
};

/// A horn as lengths of effective tube with all slides at their designed positions.
struct Tube {
    /// In tune with no valve down: c_ref / (2 f1).
    units::Millimetres open{0.0};
    /// `valves[i]` is what valve i+1 adds.
    std::vector<units::Millimetres> valves;
    std::vector<SlideTube> slides;
    std::vector<Loop> loops;
    bool operator==(const Tube&) const = default;
};

/// Effective length in tune of a horn whose partials 2 to 8 share the fundamental `f1`: c_ref/(2 f1).
units::Millimetres open_length(units::Hertz f1);

/// What a valve adds to `open` so that alone it lowers by `lowering` exactly: open (2^(lowering/1200) - 1).
units::Millimetres ideal_valve_tube(units::Millimetres open, units::Cents lowering);

/// Length in use with `down` pressed and each slide of `tube.slides` at the position of the same index (mm
/// out). Throws Refusal if `positions.size()` is not `tube.slides.size()`.
units::Millimetres sounding_length(const Tube& tube, ValveSet down,
                                   std::span<const units::Millimetres> positions);
/// The same with all slides where they were designed to stand.
units::Millimetres designed_length(const Tube& tube, ValveSet down);

/// Frequency of partial `n` of a length: n c_ref/(2 length).
units::Hertz partial_frequency(units::Millimetres length, int n);

/// How sharp partial `n` of `length` is against `pitch` in equal temperament: 1200 log2(n c_ref/(2 length
/// f_ET)).
units::Cents lean(units::Millimetres length, int n, units::Pitch pitch, units::Hertz a4 = units::standard_a4);

/// What `extra` mm of effective tube does to a length: -1200 log2(1 + extra/length).
units::Cents change_by_tube(units::Millimetres length, units::Millimetres extra);

/// The tube to add for a wanted change, its inverse: length (2^(-change/1200) - 1).
units::Millimetres tube_for_change(units::Millimetres length, units::Cents change);

/// Whether the slide acts while `down` is pressed.
bool acts(const SlideTube& slide, ValveSet down);

/// d(lean)/d(position) of a slide at a length in use: -1200/ln 2 * legs bore/length if it acts, else 0.
units::CentsPerMillimetre pull_slope(const SlideTube& slide, ValveSet down, units::Millimetres length);

}  // namespace lowledger::acoustics
