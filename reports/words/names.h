#pragma once

#include <string>

#include "model/horns/kind.h"
#include "model/horns/note_style.h"
#include "model/studio/date.h"
#include "model/studio/level.h"
#include "model/units/pitch.h"
#include "model/units/quantity.h"
#include "reports/words/words.h"

namespace lowledger::words {

/// Whole cents with a sign, the minus as U+2212: "+12", "−7", "0".
std::string cents_text(units::Cents cents);
/// Cents to the nearest whole one, without a sign; what a counted sentence is filled with.
int whole_cents(units::Cents cents);

/// "15 mm", the space unbreakable; `decimals` only where the teacher asked for them.
std::string millimetres_text(units::Millimetres length, int decimals = 0);

/// A sounding note as the player's part calls it, signs as signs, no octave: "B♭"; "C" in a treble-clef
/// euphonium's part.
std::string note_name(units::Pitch sounding, const horns::NoteStyle& style);
/// With its octave, where two of the same name are in sight: "B♭2", "C4".
std::string note_name_with_octave(units::Pitch sounding, const horns::NoteStyle& style);
/// As a tuner shows it, in the player's language: the sounding note without octave.
std::string tuner_name(units::Pitch sounding, const horns::NoteStyle& style);
/// With its octave and, where the player calls it otherwise than a tuner, the tuner's name: "C4 (tuner B♭)".
std::string note_and_tuner_name(const Words& words, units::Pitch sounding, const horns::NoteStyle& style);

/// As it stands under a note: "0", "1-3", "4", or a hand slide's position and valves, "2+F". The flats of a
/// valve's label are signs.
std::string fingering_label(const horns::HornKind& kind, const horns::Fingering& fingering);

/// The same as short as it can stand in music: "0", "13", "4".
std::string fingering_figure(const horns::HornKind& kind, const horns::Fingering& fingering);

/// A kind's name with its flats as signs: "BB♭ tuba, four valves".
std::string kind_name(const horns::HornKind& kind);

/// A note's name with how it is played, to stand inside a sentence: "open B♭", "G with valves 1-2", "F in
/// position 1".
std::string played_note(const Words& words, const horns::HornKind& kind, const std::string& name,
                        const horns::Fingering& fingering);

/// With a capital at the start of a sentence or heading: "Open B♭", "Main slide".
std::string capitalised(std::string text);

/// "25 November 2026".
std::string date_text(const Words& words, studio::Date date);
/// "Beginner".
std::string level_name(const Words& words, studio::Level level);

}  // namespace lowledger::words
