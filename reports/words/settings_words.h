#pragma once

#include <string>
#include <vector>

#include "model/tuning/answer.h"
#include "reports/words/speech.h"

namespace lowledger::words {

/// Where the main slide would belong for the horn alone, and what the player's settled pitch adds; empty
/// where that is not known.
std::string both_mains_sentence(const Speech& speech, const tuning::TuningAnswer& answer);

/// By which note to set a slide, and why; the other is the best of another partial or pitch.
std::string set_by_sentence(const Speech& speech, const tuning::NotesForSlide& notes);

/// One fingering for all notes of another: "One rule will do: play 3 for every 1-2 (G, D)."
std::string family_sentence(const Speech& speech, const tuning::FamilyRule& rule);

/// A slide at its limit that leaves its notes out of tune: for the technician.
std::string tube_sentence(const Speech& speech, const tuning::TubeOff& tube);

/// What a teacher may want beside the settings: tubes that are too short or too long, both places of the main
/// slide, by which notes to set slides, and the cheapest rule for each usual fingering.
std::vector<std::string> beside_settings(const Speech& speech, const tuning::TuningAnswer& answer);

}  // namespace lowledger::words
