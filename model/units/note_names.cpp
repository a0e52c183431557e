#include "model/units/note_names.h"

#include <array>
#include <cctype>
#include <utility>

#include "model/units/number_text.h"

namespace lowledger::units {
namespace {

constexpr std::string_view letters = "CDEFGAB";
constexpr std::array<std::string_view, 7> syllables = {"Do", "Re", "Mi", "Fa", "Sol", "La", "Si"};
constexpr std::array<std::pair<std::string_view, Letter>, 10> read_syllables = {{{"do", Letter::c},
                                                                                 {"re", Letter::d},
                                                                                 {"ré", Letter::d},
                                                                                 {"mi", Letter::e},
                                                                                 {"fa", Letter::f},
                                                                                 {"sol", Letter::g},
                                                                                 {"so", Letter::g},
                                                                                 {"la", Letter::a},
                                                                                 {"si", Letter::b},
                                                                                 {"ti", Letter::b}}};
constexpr std::string_view flat_sign = "\u266D";
constexpr std::string_view sharp_sign = "\u266F";

std::string signs(int alteration) {
    std::string text;
    for (int i = 0; i < alteration; ++i)
        text += sharp_sign;
    for (int i = 0; i > alteration; --i)
        text += flat_sign;
    return text;
}

std::string repeated(std::string_view ending, int times) {
    std::string text;
    for (int i = 0; i < times; ++i)
        text += ending;
    return text;
}

/// Es and As drop the e of their ending; B-flat is B, and only a double flat of H is spelt from it (Heses).
std::string german_name(const Spelling& spelling) {
    const bool is_b = spelling.letter == Letter::b;
    std::string name = is_b ? "H" : std::string(1, letters.at(static_cast<std::size_t>(spelling.letter)));
    if (spelling.alteration >= 0) return name + repeated("is", spelling.alteration);
    if (is_b && spelling.alteration == -1) return "B";
    const bool drops_e = spelling.letter == Letter::e || spelling.letter == Letter::a;
    return name + (drops_e ? "s" : "es") + repeated("es", -spelling.alteration - 1);
}

/// Lower case of the ASCII letters; other bytes stay.
std::string lowered(std::string_view text) {
    std::string out(text);
    for (char& c : out)
        c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return out;
}

/// The longest name that `text` begins with, of all letters and alterations.
std::optional<Spelling> longest_german(std::string_view text, std::size_t& length) {
    std::optional<Spelling> found;
    length = 0;
    for (int letter = 0; letter < 7; ++letter) {
        for (int alteration = -2; alteration <= 2; ++alteration) {
            const Spelling spelling{static_cast<Letter>(letter), alteration, 0};
            const std::string name = lowered(german_name(spelling));
            if (text.starts_with(name) && name.size() > length) {
                found = spelling;
                length = name.size();
            }
        }
    }
    return found;
}

std::optional<Spelling> parse_german(const std::string& text) {
    std::size_t length = 0;
    auto spelling = longest_german(text, length);
    if (!spelling) return std::nullopt;
    const auto octave = parse_integer(std::string_view(text).substr(length));
    if (!octave || *octave < -1 || *octave > 9) return std::nullopt;
    spelling->octave = *octave;
    return spelling;
}

std::optional<Spelling> parse_solfege(const std::string& text) {
    for (const auto& [syllable, letter] : read_syllables) {
        if (!text.starts_with(syllable)) continue;
        const std::string english =
            letters.at(static_cast<std::size_t>(letter)) + text.substr(syllable.size());
        if (const auto spelling = parse_spelling(english)) return spelling;
    }
    return std::nullopt;
}

}  // namespace

std::string note_name(const Spelling& spelling, Naming naming) {
    const auto letter = static_cast<std::size_t>(spelling.letter);
    switch (naming) {
        case Naming::german:
            return german_name(spelling);
        case Naming::solfege:
            return std::string(syllables.at(letter)) + signs(spelling.alteration);
        case Naming::english:
            break;
    }
    return letters.at(letter) + signs(spelling.alteration);
}

std::optional<Spelling> parse_note(std::string_view text, Naming naming) {
    switch (naming) {
        case Naming::german:
            return parse_german(lowered(text));
        case Naming::solfege:
            return parse_solfege(lowered(text));
        case Naming::english:
            break;
    }
    return parse_spelling(text);
}

}  // namespace lowledger::units
