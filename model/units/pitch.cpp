#include "model/units/pitch.h"

#include <array>
#include <cctype>

#include "model/units/number_text.h"
#include "model/units/refusal.h"

namespace lowledger::units {
namespace {

constexpr std::array<int, 7> semitones_of_letter = {0, 2, 4, 5, 7, 9, 11};
constexpr std::string_view letters = "CDEFGAB";

std::optional<Letter> take_letter(std::string_view& text) {
    if (text.empty()) return std::nullopt;
    const auto at = letters.find(static_cast<char>(std::toupper(static_cast<unsigned char>(text.front()))));
    if (at == std::string_view::npos) return std::nullopt;
    text.remove_prefix(1);
    return static_cast<Letter>(at);
}

bool take(std::string_view& text, std::string_view sign) {
    if (!text.starts_with(sign)) return false;
    text.remove_prefix(sign.size());
    return true;
}

int take_alteration(std::string_view& text) {
    int alteration = 0;
    while (alteration > -2 && alteration <= 0 && (take(text, "b") || take(text, "\u266D")))
        --alteration;
    while (alteration < 2 && alteration >= 0 && (take(text, "#") || take(text, "\u266F")))
        ++alteration;
    return alteration;
}

}  // namespace

Pitch::Pitch(int midi) : midi_(midi) {
    if (midi < 0 || midi > 127) {
        throw Refusal("A pitch of MIDI number " + std::to_string(midi) + " lies outside 0 to 127.");
    }
}

Hertz equal_tempered(Pitch pitch, Hertz a4) {
    return raised(a4, Cents(100.0 * (pitch.midi() - 69)));
}

Spelling spell(Pitch pitch, Accidentals prefer) {
    constexpr std::array<Letter, 12> flat_letters = {Letter::c, Letter::d, Letter::d, Letter::e,
                                                     Letter::e, Letter::f, Letter::g, Letter::g,
                                                     Letter::a, Letter::a, Letter::b, Letter::b};
    constexpr std::array<Letter, 12> sharp_letters = {Letter::c, Letter::c, Letter::d, Letter::d,
                                                      Letter::e, Letter::f, Letter::f, Letter::g,
                                                      Letter::g, Letter::a, Letter::a, Letter::b};
    const auto chroma = static_cast<std::size_t>(pitch.midi() % 12);
    const Letter letter = prefer == Accidentals::flats ? flat_letters.at(chroma) : sharp_letters.at(chroma);
    const int natural = semitones_of_letter.at(static_cast<std::size_t>(letter));
    return {letter, static_cast<int>(chroma) - natural, pitch.midi() / 12 - 1};
}

Pitch pitch_of(const Spelling& spelling) {
    return Pitch((spelling.octave + 1) * 12 +
                 semitones_of_letter.at(static_cast<std::size_t>(spelling.letter)) + spelling.alteration);
}

std::string file_name(const Spelling& spelling) {
    std::string name(1, letters.at(static_cast<std::size_t>(spelling.letter)));
    for (int i = 0; i < spelling.alteration; ++i)
        name += '#';
    for (int i = 0; i > spelling.alteration; --i)
        name += 'b';
    return name + std::to_string(spelling.octave);
}

std::string file_name(Pitch pitch) {
    return file_name(spell(pitch));
}

std::optional<Spelling> parse_spelling(std::string_view text) {
    const auto letter = take_letter(text);
    if (!letter) return std::nullopt;
    const int alteration = take_alteration(text);
    const auto octave = parse_integer(text);
    if (!octave || *octave < -1 || *octave > 9) return std::nullopt;
    return Spelling{*letter, alteration, *octave};
}

std::optional<Pitch> parse_pitch(std::string_view text) {
    const auto spelling = parse_spelling(text);
    if (!spelling) return std::nullopt;
    try {
        return pitch_of(*spelling);
    } catch (const Refusal&) {
        return std::nullopt;
    }
}

}  // namespace lowledger::units
