#pragma once

#include <random>
#include <string>
#include <vector>

#include "model/tuning/answer.h"

namespace lowledger::tuning {

/// A BBb tuba with a student, the kind's slides at their designed places and no sheet yet.
TuningInputs fresh_inputs(studio::Level level = studio::Level::middle,
                          const std::string& kind = "bbb-tuba-3");

/// A horn whose every length is known, for readings that say what it does: `extra_open` mm of tube always,
/// and `extra_valve[i]` with valve i+1.
struct TrueHorn {
    units::Millimetres extra_open{0.0};
    std::vector<units::Millimetres> extra_valve;
    /// How the player plays everything, whatever the horn.
    units::Cents player{0.0};
    /// Standard deviation of a take, and the seed of its randomness.
    units::Cents noise{0.0};
    unsigned seed = 1;
};

/// What the tuner shows at these positions, in the usual room, player's correction included.
units::Cents true_reading(const TuningInputs& inputs, const TrueHorn& horn,
                          const std::map<std::string, units::Millimetres>& positions, units::Pitch note,
                          const horns::Fingering& fingering, double kappa);

/// A warm sheet of that day without readings.
studio::TuningSheet empty_sheet(studio::Date on);

/// A warm sheet of today with `takes` of the tuning order's notes and of `more` (played as charted).
studio::TuningSheet sheet_of(const TuningInputs& inputs, const TrueHorn& horn, int takes = 2,
                             const std::vector<std::string>& more = {});

}  // namespace lowledger::tuning
