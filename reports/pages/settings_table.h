#pragma once

#include <span>

#include "reports/pages/handout.h"

namespace lowledger::pages {

/// The slide settings of a group as the teacher's table: a row a student with horn, every slide, and what to
/// know before moving anything. As many pages as it takes, the paper on its side, each with the head and its
/// number.
canvas::Document settings_table(std::span<const HandoutInputs> rows, const studio::StudioFacts& facts,
                                studio::Date date, const PageStyle& style, const words::Words& words,
                                const canvas::Faces& faces);

}  // namespace lowledger::pages
