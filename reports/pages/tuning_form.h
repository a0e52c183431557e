#pragma once

#include <span>

#include "reports/pages/page_style.h"
#include "reports/pages/player.h"
#include "reports/words/words.h"

namespace lowledger::canvas {
class Faces;
}

namespace lowledger::pages {

/// Tuning sheets to fill in by hand, for a class: for each player the tuning notes in working order with
/// their fingerings, blanks for twice round, and one for where each slide stands.
canvas::Document tuning_forms(std::span<const Player> players, const studio::StudioFacts& facts,
                              studio::Date date, const PageStyle& style, const words::Words& words,
                              const canvas::Faces& faces);

}  // namespace lowledger::pages
