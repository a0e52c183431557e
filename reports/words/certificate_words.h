#pragma once

#include <string>

#include "model/tuning/answer.h"
#include "reports/words/speech.h"

namespace lowledger::words {

/// How much better other positions of the slides can be, from the answer's certificate; that it is still
/// awaited; empty where nothing moves, since then none is spoken of.
std::string certificate_sentence(const Speech& speech, const tuning::TuningAnswer& answer);

}  // namespace lowledger::words
