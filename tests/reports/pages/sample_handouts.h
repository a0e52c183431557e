#pragma once

#include <string>
#include <vector>

#include "reports/pages/handout.h"

namespace lowledger::pages {

/// A middle player on a four-valve BBb tuba, everything measured: main out, fourth in, others left.
HandoutInputs usual_handout();

struct NamedHandout {
    std::string name;
    HandoutInputs inputs;
};

/// The usual one and what pages find hard: long names, six slides at their longest, every note to watch,
/// nothing measured, tuning notes missing, unknown positions, stuck slides, names in Polish, Greek and
/// Cyrillic.
std::vector<NamedHandout> awkward_handouts();

/// Answered by the model, for a horn of this kind that plays as designed but stands 12 mm too far in on its
/// first slide, from readings of every tuning note and the core range.
HandoutInputs answered_handout(const horns::HornKind& kind);

}  // namespace lowledger::pages
