#pragma once

#include <string>
#include <vector>

#include "reports/charts/lean_chart.h"

namespace lowledger::charts {

/// A chart like a beginner's on a BBb tuba: tuning notes and notes to watch, some not measured, one beyond
/// the scale, one alternate, one pedal note.
LeanChart handout_chart();

/// Two octaves and a half, every semitone.
LeanChart full_range_chart();

}  // namespace lowledger::charts
