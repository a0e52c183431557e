#pragma once

#include "reports/pages/handout.h"

namespace lowledger::pages {

/// The strips of all slides at true size, to cut out: on each the scale over the slide's travel and a mark
/// where it should stand. What has no known position or is longer than the page is named instead.
canvas::Document strips_page(const HandoutInputs& inputs, const words::Words& words,
                             const canvas::Faces& faces);

}  // namespace lowledger::pages
