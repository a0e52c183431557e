#pragma once

#include <cstddef>
#include <stop_token>
#include <vector>

#include "model/tuning/settings.h"

namespace lowledger::tuning {

/// What branch and bound says of settings that were found by search.
struct Certificate {
    /// No positions of the slides that move that keep the side conditions as well as these, with whatever way
    /// of playing each note, have a lower objective than this.
    units::SquareCents bound;
    /// The settings' objective less the bound; 0 where they are the optimum, never below.
    units::SquareCents gap;
    /// The gap is at most a millionth of the objective.
    bool closed = false;
    /// Boxes looked at.
    std::size_t boxes = 0;
    /// Positions (one for each slide of the question) with a lower objective by more than a millionth, where
    /// the search had missed them; else empty.
    std::vector<units::Millimetres> better{};
    bool operator==(const Certificate&) const = default;
};

/// Certifies what `recommend` gave for this question: of the slides that it moved, between their limits (on
/// their places where there is a step), the others staying; of every slide that is not fixed where the
/// question's `chance_of_better` is 0. Branch and bound (Land and Doig 1960) over boxes of positions and sets
/// of ways: with a way for each note the objective is convex in the positions, since a lean falls by the
/// logarithm of a length and expected cost is strictly convex in the lean; a note whose way is open is
/// bounded from below by a plane under all its ways. A gap that is left after `most_boxes`, or when asked to
/// stop, is told and holds. Throws what `recommend` throws.
Certificate certify(const SettingsQuestion& question, const SlideSettings& settings,
                    const std::stop_token& stop = {}, std::size_t most_boxes = 20'000);

}  // namespace lowledger::tuning
