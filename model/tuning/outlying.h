#pragma once

#include <optional>

#include "model/tuning/suspicion.h"

namespace lowledger::tuning {

/// The take of the answer's own sheets that is furthest, in standard deviations, from what all other takes
/// say: the score test of a take that is off by itself. `size` counts the takes that were looked at.
struct SuspectTake {
    OutlyingTake take;
    /// Score over its standard deviation.
    double z = 0.0;
};
std::optional<SuspectTake> furthest_take(const Examined& examined, const Figures& figures);
std::size_t takes_examined(const Evidence& evidence);

}  // namespace lowledger::tuning
