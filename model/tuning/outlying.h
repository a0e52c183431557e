#pragma once

#include <vector>

#include "model/tuning/measured.h"

namespace lowledger::tuning {

/// How far a note's readings are from what all others say of it, in cents, and the variance of that.
struct LeftOut {
    double off = 0.0;
    double variance = 0.0;
};

/// Takes further than `most` standard deviations from their fellows: the other takes of the note in that
/// sitting. Of two that disagree it is the one further from what the other notes say; a take without fellows
/// is held against the other notes alone. `left_out` belongs to `measured`, one each.
std::vector<OutlyingTake> outlying_takes(const std::vector<MeasuredNote>& measured,
                                         const std::vector<LeftOut>& left_out, const LevelFigures& level,
                                         double most);

}  // namespace lowledger::tuning
