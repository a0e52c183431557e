#pragma once

#include <optional>
#include <string_view>

#include "model/studio/own_words.h"
#include "model/studio/records.h"

namespace lowledger::studio {

/// The words that stand for a choice in files (studio file, CSV, JSON, command line): "beginner", "letter",
/// "flats", "measured". The reading side takes exactly those; empty for any other text.
std::string_view file_word(Level level);
std::string_view file_word(StudioFacts::Paper paper);
std::string_view file_word(units::Accidentals accidentals);
std::string_view file_word(units::Naming naming);
std::string_view file_word(SlidePosition::Origin origin);
std::string_view file_word(HeadPicture::Type type);

std::optional<Level> parse_level(std::string_view word);
std::optional<StudioFacts::Paper> parse_paper(std::string_view word);
std::optional<units::Accidentals> parse_accidentals(std::string_view word);
std::optional<units::Naming> parse_naming(std::string_view word);
std::optional<SlidePosition::Origin> parse_origin(std::string_view word);
std::optional<HeadPicture::Type> parse_picture_type(std::string_view word);

}  // namespace lowledger::studio
