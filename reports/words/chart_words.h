#pragma once

#include <span>
#include <string>
#include <vector>

#include "model/horns/chart.h"
#include "reports/words/speech.h"

namespace lowledger::words {

/// As the reader calls it without octave, a black key by both its names, the one on the staff first: "G♭/F♯".
std::string both_written_names(const Speech& speech, units::Pitch note);

/// How far the slide goes from the plain position for a note that leans so there: "+8", "−28", in mm, + out.
/// Empty where it would have to go further in than all the way in, or the horn has no slide.
std::string slide_move(const horns::HornKind& kind, const horns::Fingering& fingering, units::Cents lean);

/// How the chart is written: its clef, and where the reader's names are not a tuner's an example.
std::string written_sentence(const Speech& speech);

/// Why this note's usual way is usual.
std::string usual_sentence(const Speech& speech, const horns::ChartNote& note);

/// The notes whose usual way is not the one that ranks first, a sentence for each reason there is.
std::vector<std::string> usual_sentences(const Speech& speech, std::span<const horns::ChartNote> chart);

/// The false tones among the usual ways; empty if there is none.
std::string false_tones_sentence(const Speech& speech, std::span<const horns::ChartNote> chart);

/// Of a trombone: which notes from the pedal up lie beyond the slide's end, and which it has no way for. Of
/// any other horn: which of its usual range it has no way for.
std::vector<std::string> reach_sentences(const Speech& speech);

}  // namespace lowledger::words
