#pragma once

#include <vector>

#include "reports/charts/lean_chart.h"
#include "reports/pages/handout.h"

namespace lowledger::pages {

/// What a handout's chart shows: the tuning notes, the band's note and the worst notes to watch, at most
/// `most` in the order of pitch. Leans are as the student plays: before, with the slides where they stand and
/// the usual fingering (on a trombone with first played a little out, as it is meant to be); after, with the
/// slides as recommended and the fingering that goes with them.
std::vector<charts::LeanNote> chart_notes(const HandoutInputs& inputs, std::size_t most);

}  // namespace lowledger::pages
