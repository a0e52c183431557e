#pragma once

#include <span>
#include <vector>

#include "reports/pages/page_style.h"
#include "reports/pages/player.h"
#include "reports/words/words.h"

namespace lowledger::canvas {
class Faces;
}

namespace lowledger::pages {

/// The section pass: a row a player with the same notes in each one's own part and octave, fingerings, and
/// blanks for what the tuner shows. `notes` are sounding pitches whose octave is only a hint: each player has
/// them in the octave nearest the note that a band tunes to on that horn. A note that a horn has no way for
/// is left out of its row.
canvas::Document pass_sheet(std::span<const Player> players, std::span<const units::Pitch> notes,
                            const studio::StudioFacts& facts, studio::Date date, const PageStyle& style,
                            const words::Words& words, const canvas::Faces& faces);

}  // namespace lowledger::pages
