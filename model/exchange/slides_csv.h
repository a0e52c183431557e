#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "model/horns/kind.h"
#include "model/studio/records.h"

namespace lowledger::exchange {

/// A slide as a file tells it.
struct SlideRow {
    studio::HornSlide slide;
    /// Empty: unknown.
    std::optional<units::Millimetres> position;
    bool operator==(const SlideRow&) const = default;
};

/// Slides from CSV with the columns slide, position, least, travel: every slide of `kind` once, in the kind's
/// order. A slide that the file leaves out, or an empty field, has the kind's least and travel and an unknown
/// position. Throws Refusal that names `file`, line and column: a slide that the kind has not or that is
/// there twice, words for numbers, a least above the travel, a position beyond the travel or below 0.
std::vector<SlideRow> read_slides_csv(std::string_view text, std::string_view file,
                                      const horns::HornKind& kind);

/// The slides of a kind as it comes: its least and travel, positions unknown.
std::vector<SlideRow> slides_of_kind(const horns::HornKind& kind);

}  // namespace lowledger::exchange
