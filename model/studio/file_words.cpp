#include "model/studio/file_words.h"

#include <array>
#include <utility>

namespace lowledger::studio {
namespace {

template <typename Choice, std::size_t Count>
using Words = std::array<std::pair<Choice, std::string_view>, Count>;

constexpr Words<Level, 3> levels = {
    {{Level::beginner, "beginner"}, {Level::middle, "middle"}, {Level::advanced, "advanced"}}};
constexpr Words<StudioFacts::Paper, 2> papers = {
    {{StudioFacts::Paper::a4, "a4"}, {StudioFacts::Paper::letter, "letter"}}};
constexpr Words<units::Accidentals, 2> accidentals_words = {
    {{units::Accidentals::flats, "flats"}, {units::Accidentals::sharps, "sharps"}}};
constexpr Words<units::Naming, 3> namings = {{{units::Naming::english, "english"},
                                              {units::Naming::german, "german"},
                                              {units::Naming::solfege, "solfege"}}};
constexpr Words<HeadPicture::Type, 2> picture_types = {
    {{HeadPicture::Type::png, "png"}, {HeadPicture::Type::jpeg, "jpeg"}}};
constexpr Words<SlidePosition::Origin, 4> origins = {{{SlidePosition::Origin::start, "start"},
                                                      {SlidePosition::Origin::measured, "measured"},
                                                      {SlidePosition::Origin::moved, "moved"},
                                                      {SlidePosition::Origin::repair, "repair"}}};

template <typename Choice, std::size_t Count>
std::string_view word_of(const Words<Choice, Count>& words, Choice choice) {
    for (const auto& [value, word] : words) {
        if (value == choice) return word;
    }
    return {};
}

template <typename Choice, std::size_t Count>
std::optional<Choice> choice_of(const Words<Choice, Count>& words, std::string_view text) {
    for (const auto& [value, word] : words) {
        if (word == text) return value;
    }
    return std::nullopt;
}

}  // namespace

std::string_view file_word(Level level) {
    return word_of(levels, level);
}
std::string_view file_word(StudioFacts::Paper paper) {
    return word_of(papers, paper);
}
std::string_view file_word(units::Accidentals accidentals) {
    return word_of(accidentals_words, accidentals);
}
std::string_view file_word(units::Naming naming) {
    return word_of(namings, naming);
}
std::string_view file_word(HeadPicture::Type type) {
    return word_of(picture_types, type);
}
std::string_view file_word(SlidePosition::Origin origin) {
    return word_of(origins, origin);
}

std::optional<Level> parse_level(std::string_view word) {
    return choice_of(levels, word);
}
std::optional<StudioFacts::Paper> parse_paper(std::string_view word) {
    return choice_of(papers, word);
}
std::optional<units::Accidentals> parse_accidentals(std::string_view word) {
    return choice_of(accidentals_words, word);
}
std::optional<units::Naming> parse_naming(std::string_view word) {
    return choice_of(namings, word);
}
std::optional<HeadPicture::Type> parse_picture_type(std::string_view word) {
    return choice_of(picture_types, word);
}
std::optional<SlidePosition::Origin> parse_origin(std::string_view word) {
    return choice_of(origins, word);
}

}  // namespace lowledger::studio
