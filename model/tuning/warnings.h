#pragma once

#include <vector>

#include "model/tuning/answer.h"

namespace lowledger::tuning {

/// What the readings say against themselves.
struct Warnings {
    std::vector<OutlyingTake> takes;
    std::vector<MoveCheck> moves;
    std::vector<OtherHornWarning> other_horn;
};

/// Tests each take, each place of a slide on a later sheet and each sheet's horn, tells the worst where it is
/// beyond chance, sets it aside and looks again. Belief rests on all sheets all the same; takes that are told
/// count less in it.
Warnings warnings_of(const TuningInputs& inputs, const Figures& figures, double corrects_more);

}  // namespace lowledger::tuning
