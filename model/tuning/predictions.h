#pragma once

#include <vector>

#include "model/tuning/measured.h"
#include "model/tuning/ways.h"

namespace lowledger::tuning {

/// One quantity that is predicted for every way: what acoustics says, in cents, and its terms today.
struct Prediction {
    std::vector<double> expected;
    std::vector<Terms> terms;
};

/// The predictions of docs/tuning.md, "The profile".
struct Predictions {
    Prediction as_played;
    /// The same with the hand slide in its plain position.
    Prediction placed;
    Prediction for_slides;
    Prediction aim;
};
Predictions predictions_of(const Evidence& evidence, const std::vector<WayToPlay>& ways,
                           double corrects_more);

}  // namespace lowledger::tuning
