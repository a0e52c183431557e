#include "model/studio/tuner_number.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <fmt/format.h>

#include "model/units/note_names.h"
#include "model/units/number_text.h"

namespace lowledger::studio {
namespace {

constexpr double tuner_wraps_at = 50.0;
constexpr double semitone = 100.0;

/// What was typed, in parts: "F#2-45" is the name "F#", the octave 2 and the number "-45".
struct Typed {
    std::string name;
    std::optional<int> octave;
    std::string number;
};

bool is_digit(char c) {
    return '0' <= c && c <= '9';
}

void replace_all(std::string& text, std::string_view what, std::string_view by) {
    for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + by.size()))
        text.replace(at, what.size(), by);
}

std::string trimmed(std::string_view text) {
    constexpr std::string_view spaces = " \t\r\n";
    const auto first = text.find_first_not_of(spaces);
    if (first == std::string_view::npos) return {};
    return std::string(text.substr(first, text.find_last_not_of(spaces) - first + 1));
}

std::string lower(std::string text) {
    std::ranges::transform(text, text.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

/// One sign for minus, one for each accidental, no unit behind, no space after a sign.
std::string normalised(std::string_view typed) {
    std::string text(typed);
    replace_all(text, "\u2212", "-");
    replace_all(text, "\u2013", "-");
    replace_all(text, "\u266d", "b");
    replace_all(text, "\u266f", "#");
    replace_all(text, "\u00a0", " ");
    replace_all(text, "\u202f", " ");
    text = trimmed(text);
    constexpr std::array<std::string_view, 5> units = {"cents", "cent", "ct", "c", "\u00a2"};
    for (const std::string_view unit : units) {
        // "G c" would leave a name without a number; only a digit carries a unit.
        if (!text.ends_with(unit)) continue;
        const std::string rest = trimmed(std::string_view(text).substr(0, text.size() - unit.size()));
        if (!rest.empty() && is_digit(rest.back())) text = rest;
        break;
    }
    replace_all(text, "- ", "-");
    replace_all(text, "+ ", "+");
    return text;
}

Typed parts(std::string_view typed) {
    const std::string text = normalised(typed);
    Typed out;
    std::size_t at = 0;
    const auto letter =
        text.empty() ? '\0' : static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
    if ('A' <= letter && letter <= 'G') {
        out.name = letter;
        for (at = 1; at < text.size() && at < 3 && (text[at] == 'b' || text[at] == '#'); ++at)
            out.name += text[at];
        if (at < text.size() && is_digit(text[at])) {
            out.octave = text[at] - '0';
            ++at;
        }
    }
    out.number = trimmed(std::string_view(text).substr(at));
    return out;
}

TunerNumber refused(std::string sentence) {
    return {TunerNumber::Verdict::refused, units::Cents(0.0), std::move(sentence)};
}

/// Semitones from `expected` up to the note of that name that is nearest; `name` without an octave.
int semitones_to_nearest(const units::Spelling& name, units::Pitch expected) {
    const int difference = (units::pitch_of(name).midi() - expected.midi()) % 12;
    const int up = difference < 0 ? difference + 12 : difference;
    return up > 6 ? up - 12 : up;
}

TunerNumber judged(const Typed& typed, double number, int semitones, units::Pitch expected) {
    const units::Cents cents(semitones * semitone + number);
    const units::Spelling spelling = units::spell(expected, units::Accidentals::flats);
    const std::string note =
        units::note_name(spelling, units::Naming::english) + std::to_string(spelling.octave);
    const std::string value = units::signed_text(cents.value(), 0);
    if (std::abs(cents.value()) > semitone) {
        return refused(
            fmt::format("That is {} cents from {}, more than a semitone: check the note and the "
                        "fingering, then play it again.",
                        value, note));
    }
    TunerNumber out{TunerNumber::Verdict::taken, cents, {}};
    if (std::abs(cents.value()) > tuner_wraps_at) {
        out.verdict = TunerNumber::Verdict::ask;
        out.sentence = fmt::format(
            "{} cents from {} is nearer to another note: take it if that is what sounded.", value, note);
    } else if (!typed.name.empty() && std::abs(number) > tuner_wraps_at) {
        out.verdict = TunerNumber::Verdict::ask;
        out.sentence = fmt::format(
            "A tuner that names the note shows at most 50 cents beside it: take {} cents "
            "from {} if that is what was meant.",
            value, note);
    } else if (typed.octave) {
        const units::Spelling shown = *units::parse_spelling(typed.name + std::to_string(*typed.octave));
        const int octaves_off = (units::pitch_of(shown).midi() - expected.midi() - semitones) / 12;
        if (octaves_off != 0) {
            out.verdict = TunerNumber::Verdict::ask;
            out.sentence = fmt::format(
                "The tuner names another octave than {}: take {} cents if the right note "
                "sounded.",
                note, value);
        }
    }
    return out;
}

}  // namespace

TunerNumber read_tuner_number(std::string_view typed, units::Pitch expected) {
    const Typed read = parts(typed);
    if (read.number.empty()) {
        return refused(read.name.empty()
                           ? "Type the cents that the tuner shows, as in -7 or +12."
                           : fmt::format("There is no number of cents after {}: type it as in {}-7.",
                                         read.name, read.name));
    }
    const std::optional<double> number = units::parse_decimal(read.number);
    if (!number) {
        return refused(
            fmt::format("\"{}\" is not a tuner's number: type cents as in -7, +12 or 7,5, with the "
                        "tuner's note before it when it names a neighbour, as in G-45.",
                        trimmed(typed)));
    }
    if (read.name.empty()) return judged(read, *number, 0, expected);
    // Any octave in the middle of the range will do, since only the name counts.
    const std::optional<units::Spelling> name = units::parse_spelling(read.name + "4");
    if (!name) return refused(fmt::format("\"{}\" is not the name of a note.", read.name));
    return judged(read, *number, semitones_to_nearest(*name, expected), expected);
}

std::optional<units::Millimetres> read_slide_position(std::string_view typed, units::Millimetres travel) {
    std::string text = lower(trimmed(typed));
    if (text == "in") return units::Millimetres(0.0);
    if (text == "half") return travel / 2.0;
    if (text.ends_with("mm")) text = trimmed(std::string_view(text).substr(0, text.size() - 2));
    const std::optional<double> number = units::parse_decimal(text);
    if (!number || *number < 0.0) return std::nullopt;
    return units::Millimetres(*number == 0.0 ? 0.0 : *number);
}

}  // namespace lowledger::studio
