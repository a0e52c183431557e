#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/tuning/suspicion.h"

namespace lowledger::tuning {

/// A later sheet's slides, and everything that may have happened to them instead.
struct MoveStory {
    MoveCheck check;
    /// How many errors were tested.
    std::size_t tests = 0;
    /// The largest distance from as told, in standard deviations: |z| of a score, sqrt(2 log ratio) of an
    /// account without free numbers.
    double z = 0.0;
    /// Index among the answer's own used sheets.
    std::size_t sheet = 0;
};

/// One for each of the answer's own used sheets but the first where slides are written on it and on the one
/// before.
std::vector<MoveStory> move_stories(const Examined& examined, const Figures& figures);

/// Lets the slides of an account stand anywhere from that sheet on, so that what is left can be tested.
void loosen(std::vector<Row>& rows, const Evidence& evidence, std::size_t sheet, const MoveCheck& check);

}  // namespace lowledger::tuning
