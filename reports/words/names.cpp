#include "reports/words/names.h"

#include <array>
#include <cmath>

#include "model/units/note_names.h"
#include "model/units/number_text.h"

namespace lowledger::words {
namespace {

constexpr std::string_view flat = "\u266D";
constexpr std::string_view unbreakable_space = "\u00A0";

std::string with_signs(std::string label) {
    if (label.size() > 1 && label[1] == 'b') label.replace(1, 1, flat);
    return label;
}

std::string valves_label(const horns::HornKind& kind, const acoustics::ValveSet& valves) {
    std::string label;
    for (const int valve : valves.valves()) {
        if (!label.empty()) label += kind.hand_slide ? "+" : "-";
        const auto at = static_cast<std::size_t>(valve - 1);
        label += at < kind.valves.size() ? with_signs(kind.valves[at].label) : std::to_string(valve);
    }
    return label;
}

}  // namespace

std::string cents_text(units::Cents cents) {
    return units::signed_text(cents.value(), 0, true);
}

int whole_cents(units::Cents cents) {
    return static_cast<int>(std::lround(std::abs(cents.value())));
}

std::string millimetres_text(units::Millimetres length, int decimals) {
    return units::decimal_text(length.value(), decimals) + std::string(unbreakable_space) + "mm";
}

std::string note_name(units::Pitch sounding, const horns::NoteStyle& style) {
    return units::note_name(horns::spelt(sounding, style), style.naming);
}

std::string note_name_with_octave(units::Pitch sounding, const horns::NoteStyle& style) {
    return note_name(sounding, style) + std::to_string(horns::spelt(sounding, style).octave);
}

std::string tuner_name(units::Pitch sounding, const horns::NoteStyle& style) {
    return units::note_name(units::spell(sounding, style.accidentals), style.naming);
}

std::string note_and_tuner_name(const Words& words, units::Pitch sounding, const horns::NoteStyle& style) {
    std::string name = note_name_with_octave(sounding, style);
    if (!horns::calls_notes_otherwise(style.reader)) return name;
    return words.say(Sentence::note_and_tuner, {{"note", name}, {"tuner", tuner_name(sounding, style)}});
}

std::string fingering_label(const horns::HornKind& kind, const horns::Fingering& fingering) {
    const std::string valves = valves_label(kind, fingering.valves);
    if (fingering.position == 0) return valves.empty() ? "0" : valves;
    const std::string position = std::to_string(fingering.position);
    return valves.empty() ? position : position + "+" + valves;
}

std::string fingering_figure(const horns::HornKind& kind, const horns::Fingering& fingering) {
    std::string figure = fingering_label(kind, fingering);
    std::erase(figure, '-');
    return figure;
}

std::string kind_name(const horns::HornKind& kind) {
    std::string name;
    for (std::size_t i = 0; i < kind.name.size(); ++i) {
        const bool after_note = i > 0 && kind.name[i - 1] >= 'A' && kind.name[i - 1] <= 'G';
        const bool ends = i + 1 == kind.name.size() || kind.name[i + 1] == ' ' || kind.name[i + 1] == ',';
        if (kind.name[i] == 'b' && after_note && ends) {
            name += flat;
        } else {
            name += kind.name[i];
        }
    }
    return name;
}

std::string played_note(const Words& words, const horns::HornKind& kind, const std::string& name,
                        const horns::Fingering& fingering) {
    const std::string label = fingering_label(kind, fingering);
    if (fingering.position != 0 && !fingering.valves.empty()) {
        return words.say(Sentence::played_position_valves,
                         {{"note", name},
                          {"position", std::to_string(fingering.position)},
                          {"valves", valves_label(kind, fingering.valves)}});
    }
    if (fingering.position != 0)
        return words.say(Sentence::played_position, {{"note", name}, {"position", label}});
    switch (fingering.valves.count()) {
        case 0:
            return words.say(Sentence::played_open, {{"note", name}});
        case 1:
            return words.say(Sentence::played_one_valve, {{"note", name}, {"valve", label}});
        default:
            return words.say(Sentence::played_valves, {{"note", name}, {"valves", label}});
    }
}

std::string capitalised(std::string text) {
    if (!text.empty() && 'a' <= text.front() && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return text;
}

std::string level_name(const Words& words, studio::Level level) {
    switch (level) {
        case studio::Level::beginner:
            return words.say(Sentence::level_beginner);
        case studio::Level::middle:
            return words.say(Sentence::level_middle);
        case studio::Level::advanced:
            break;
    }
    return words.say(Sentence::level_advanced);
}

std::string date_text(const Words& words, studio::Date date) {
    constexpr std::array<Sentence, 12> months = {
        Sentence::month_january, Sentence::month_february, Sentence::month_march,
        Sentence::month_april,   Sentence::month_may,      Sentence::month_june,
        Sentence::month_july,    Sentence::month_august,   Sentence::month_september,
        Sentence::month_october, Sentence::month_november, Sentence::month_december};
    return words.say(Sentence::date_long,
                     {{"day", std::to_string(date.day())},
                      {"month", words.say(months.at(static_cast<std::size_t>(date.month() - 1)))},
                      {"year", std::to_string(date.year())}});
}

}  // namespace lowledger::words
