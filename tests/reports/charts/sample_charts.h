#pragma once

#include <string>
#include <vector>

#include "reports/charts/lean_chart.h"
#include "reports/charts/sheet_chart.h"
#include "reports/charts/trend_chart.h"

namespace lowledger::charts {

/// A chart like a beginner's on a BBb tuba: tuning notes and notes to watch, some not measured, one beyond
/// the scale, one alternate, one pedal note.
LeanChart handout_chart();

/// Two octaves and a half, every semitone.
LeanChart full_range_chart();

/// Five sheets of fourteen notes; some notes are missing from some, one leaves the scale.
SheetChart five_sheets();

/// The first and the last of these.
SheetChart two_sheets();

/// Three lines over a school year: shares with counts, a gap, close and far days.
TrendChart school_year();

}  // namespace lowledger::charts
