#pragma once

#include <vector>

#include "model/horns/kind.h"
#include "model/units/quantity.h"

namespace lowledger::horns {

/// How far out the hand slide stands in a position with these valves, from first: the slide has two legs, so
/// ell/2 (2^((position-1)/12) - 1), `ell` the length in use in first. With a valve the horn is longer and its
/// positions lie further apart. Zero on a horn without a hand slide.
units::Millimetres plain_position(const HornKind& kind, const Fingering& fingering);

/// A place on the hand slide.
struct SlidePlace {
    int position = 1;
    /// From first.
    units::Millimetres out;
    /// False: beyond the end of the slide.
    bool within_reach = true;
    bool operator==(const SlidePlace&) const = default;
};

/// The seven plain positions with these valves. Empty on a horn without a hand slide.
std::vector<SlidePlace> slide_places(const HornKind& kind, acoustics::ValveSet valves);

/// How much further out the slide goes from there to bring a note that leans by `lean` in tune:
/// ell/2 (2^(lean/1200) - 1), `ell` the length in use in that position; in is negative.
units::Millimetres slide_offset(const HornKind& kind, const Fingering& fingering, units::Cents lean);

/// What the fingering's pitch does when the slide goes `out` further from its plain position; in is negative.
/// Zero on a horn without a hand slide.
units::Cents change_by_hand_slide(const HornKind& kind, const Fingering& fingering, units::Millimetres out);

/// Whether the slide's place for a note that leans by `lean` in its plain position lies on the slide.
bool within_reach(const HornKind& kind, const Fingering& fingering, units::Cents lean);

}  // namespace lowledger::horns
