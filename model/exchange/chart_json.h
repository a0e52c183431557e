#pragma once

#include <optional>
#include <string>

#include "model/horns/kind.h"
#include "model/tuning/profile.h"

namespace lowledger::exchange {

/// The horn a chart is of, where it is of one horn in a student's hands.
struct ChartedHorn {
    std::string mark;
    std::string student;
    tuning::TuningProfile profile;
};

/// The chart of a kind's usual range as lowledger.chart/1 (docs/schemas): every note, its usual way and why,
/// all other ways ranked, and of a trombone where its positions lie. `reader` says how the notes are written.
std::string chart_json(const horns::HornKind& kind, const horns::Reader& reader,
                       units::Accidentals accidentals, const std::optional<ChartedHorn>& horn);

}  // namespace lowledger::exchange
