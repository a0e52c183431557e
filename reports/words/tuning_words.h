#pragma once

#include <string>
#include <vector>

#include "model/tuning/answer.h"
#include "model/units/pitch.h"
#include "reports/words/speech.h"

namespace lowledger::words {

/// "open B♭", "G with valves 1-2".
std::string played(const Speech& speech, units::Pitch note, const horns::Fingering& fingering);

/// The same and, where the player calls notes otherwise than a tuner, what the tuner shows: "open C (the
/// tuner shows B♭)". For the one place of a step where the player looks from the page to the tuner.
std::string played_and_tuner(const Speech& speech, units::Pitch note, const horns::Fingering& fingering);

/// "Pull the main slide 15 mm, to 35 mm." and its kin: leave, from here, kept by the teacher. `stuck` says
/// that a slide that is held is held because it does not move.
std::string slide_sentence(const Speech& speech, const tuning::SlideAnswer& slide, bool stuck);

/// "Then open B♭ should read about 2 cents sharp."
std::string aim_sentence(const Speech& speech, const tuning::CardStep& step);

/// The slide rule's text: where the slide goes, how it ends at a limit, and what its note should read then.
/// A slide whose note has no reading yet says which readings would show where it belongs.
std::string slide_rule_text(const Speech& speech, const tuning::TuningAnswer& answer,
                            const tuning::SlideAnswer& slide, bool stuck);

/// What to do when the step's note reads otherwise than its aim.
std::string differs_sentence(const Speech& speech, const tuning::CardStep& step,
                             const tuning::SlideAnswer& slide);

/// "On open B♭ yours should read about 3 cents sharp with these slides: ..."
std::string band_note_sentence(const Speech& speech, const tuning::BandNote& band);

/// The same with what to do about the slides meanwhile.
std::string band_note_text(const Speech& speech, const tuning::BandNote& band);

/// Where the hand slide goes from a plain position, in words and numbers: "a little further out (8 mm, 5/16
/// in)".
std::string slide_offset_text(const Words& words, units::Millimetres offset);

/// A note's place on the hand slide from its plain position: the same, or at which end of the slide it stays
/// out of tune.
std::string place_on_slide_text(const Words& words, const tuning::PlaceOnSlide& place);

/// How far out first is played once the slides are set; empty on a horn without a hand slide.
std::string hand_slide_home_sentence(const Speech& speech, const tuning::TuningCard& card);

/// A caution that a kind names: by the sentence's id without "caution-" ("lift-sousaphone"), or in its own
/// words.
std::string caution_of_kind(const Words& words, std::string_view caution);

/// A note's name, told apart from the others of what remains that share it: "low B♭", "middle B♭", "high B♭"
/// among up to three, the octave's number among more.
std::string told_apart(const Speech& speech, const tuning::Remains& remains, units::Pitch note);

/// One note of what remains, for the teacher, told apart from the others.
std::string remaining_sentence(const Speech& speech, const tuning::Remains& remains,
                               const tuning::RemainingNote& note);

/// What the teacher should know about the answer, in the order: no readings, tuning notes missing, sheets not
/// used, takes far from their fellows, slides of unknown position.
std::vector<std::string> warnings(const Speech& speech, const tuning::TuningAnswer& answer);

/// The tuning notes without a reading as a list: "A with valve 2, C with valve 4".
std::string missing_notes(const Speech& speech, const tuning::TuningAnswer& answer);

/// Which reading would help most next; empty when none would.
std::string next_note_sentence(const Speech& speech, const tuning::TuningAnswer& answer);

}  // namespace lowledger::words
