#pragma once

#include <string>

#include "reports/pages/chart_page.h"

namespace lowledger::batch {

/// The chart as text for people: a line a note with its usual way, lean and the best other ways, then what is
/// to be said of them and, of a trombone, where its positions lie.
std::string chart_table(const pages::ChartInputs& chart);

/// Every way of one note, the best first, each with partial, lean and what it is ranked by. Throws Refusal
/// where the horn has none.
std::string note_table(const pages::ChartInputs& chart, units::Pitch note);

}  // namespace lowledger::batch
