#pragma once

#include <optional>

#include "model/tuning/suspicion.h"

namespace lowledger::tuning {

/// Compares, sheet by sheet, that it is of this horn with that it is of another horn of the kind: one that
/// nobody read, or the student's other. The likelihoods' ratio exceeds C by mistake with a chance of at most
/// 1/C whatever the model (Markov's inequality).
struct SuspectSheet {
    OtherHornWarning warning;
    /// Index among the answer's own used sheets.
    std::size_t sheet = 0;
};
/// The likeliest; empty where there is nothing to compare a sheet with.
std::optional<SuspectSheet> least_like_this_horn(const Examined& examined, const TuningInputs& inputs);
std::size_t sheets_examined(const Evidence& evidence);

}  // namespace lowledger::tuning
