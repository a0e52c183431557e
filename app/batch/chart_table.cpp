#include "app/batch/chart_table.h"

#include <algorithm>
#include <fmt/format.h>

#include "model/horns/hand_slide.h"
#include "model/units/inches.h"
#include "model/units/number_text.h"
#include "model/units/refusal.h"
#include "reports/words/chart_words.h"
#include "reports/words/names.h"
#include "reports/words/tuning_words.h"

namespace lowledger::batch {

namespace {

using horns::Way;

constexpr std::size_t most_others = 3;

/// Leans of the horn where there is one, else of its kind.
units::Cents lean_of(const pages::ChartInputs& chart, units::Pitch note, const Way& way,
                     units::Cents tuning::ProfileNote::*which = &tuning::ProfileNote::mean) {
    if (chart.horn && way.tone != horns::Tone::false_tone) {
        const auto* const own = chart.horn->profile.way(note, way.fingering);
        if (own != nullptr && own->partial == way.partial) return own->*which;
    }
    return way.lean;
}

/// What the hand slide has to bring in tune: without what the student's arm adds.
units::Cents placed_lean(const pages::ChartInputs& chart, units::Pitch note, const Way& way) {
    return lean_of(chart, note, way, &tuning::ProfileNote::placed);
}

std::string fingering(const horns::HornKind& kind, const Way& way) {
    return horns::file_text(way.fingering, kind.valve_labels());
}

std::string cents(units::Cents lean) {
    return units::signed_text(lean.value(), 0, true);
}

const char* remark(const Way& way) {
    if (!way.within_reach) return "out of reach";
    if (way.tone == horns::Tone::false_tone) return "false tone";
    return way.tone == horns::Tone::pedal ? "pedal" : "";
}

/// Columns are padded by characters, signs and all.
std::string padded(const std::string& text, std::size_t width) {
    const auto letters = static_cast<std::size_t>(
        std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
    return text + std::string(letters < width ? width - letters : 0, ' ');
}

std::string others(const pages::ChartInputs& chart, const horns::ChartNote& note) {
    std::string out;
    std::size_t shown = 0;
    for (const Way& way : note.alternates) {
        if (shown == most_others || !way.within_reach || way.tone == horns::Tone::false_tone) break;
        if (shown++ > 0) out += ", ";
        out += fingering(chart.kind, way) + " " + cents(lean_of(chart, note.note, way));
    }
    return out;
}

void add_line(std::string& out, std::string line) {
    line.erase(line.find_last_not_of(' ') + 1);
    out += line + "\n";
}

void add_slide(std::string& out, const horns::HornKind& kind) {
    out += fmt::format("\nWhere the positions lie, mm from the slide all the way in (it ends at {:.0f}):\n",
                       kind.hand_slide->value());
    for (int bits = 0; bits < 1 << kind.valves.size(); ++bits) {
        acoustics::ValveSet set;
        for (int valve = 1; valve <= static_cast<int>(kind.valves.size()); ++valve)
            if ((bits >> (valve - 1)) & 1) set = set.with(valve);
        if (!kind.allows({set, 1})) continue;
        std::string line = padded(set.empty() ? "open" : words::fingering_label(kind, {set, 0}), 8);
        for (const horns::SlidePlace& place : horns::slide_places(kind, set)) {
            line += place.within_reach ? fmt::format("  {}: {:.0f} ({} in)", place.position,
                                                     place.out.value(), units::inch_text(place.out))
                                       : fmt::format("  {}: out of reach", place.position);
        }
        add_line(out, line);
    }
}

/// In words, from the way's plain position.
std::string where_on_slide(const words::Words& words, const horns::HornKind& kind, units::Pitch note,
                           const Way& way, units::Cents lean) {
    const units::Millimetres plain = horns::plain_position(kind, way.fingering);
    const units::Millimetres offset = horns::slide_offset(kind, way.fingering, lean);
    tuning::PlaceOnSlide place{
        .note = note, .fingering = way.fingering, .plain = plain, .out = plain + offset};
    if (place.out < units::Millimetres(0.0)) {
        place.reach = tuning::Reach::closed;
        place.out = units::Millimetres(0.0);
        place.left = lean + horns::change_by_hand_slide(kind, way.fingering, place.offset());
    }
    return words::place_on_slide_text(words, place);
}

words::Speech speech_of(const pages::ChartInputs& chart, const words::Words& words) {
    return {words, chart.kind, chart.style};
}

}  // namespace

std::string chart_table(const pages::ChartInputs& chart) {
    const words::Words words;
    const auto speech = speech_of(chart, words);
    const auto notes = horns::chart(chart.kind);
    std::string out = chart.kind.name;
    if (chart.horn) out += fmt::format(", {}, {}", chart.horn->mark, chart.horn->student);
    out += "\n" + words::written_sentence(speech) + "\n\n";
    const bool slide = chart.kind.hand_slide.has_value();
    add_line(out, fmt::format("{:<6} {:<8} {:<8} {:>5} {}{:<12} {}", "Note", "written", "usual", "cents",
                              slide ? " slide mm  " : " ", "", "others, the best first"));
    for (const horns::ChartNote& note : notes) {
        const units::Cents lean = lean_of(chart, note.note, note.usual);
        std::string line = padded(units::file_name(note.note), 7) +
                           padded(words::note_name_with_octave(note.note, chart.style), 9) +
                           padded(fingering(chart.kind, note.usual), 9) + padded(cents(lean), 6);
        if (slide)
            line += " " + padded(words::slide_move(chart.kind, note.usual.fingering,
                                                   placed_lean(chart, note.note, note.usual)),
                                 10);
        add_line(out, line + " " + padded(remark(note.usual), 13) + others(chart, note));
    }
    if (const auto false_tones = words::false_tones_sentence(speech, notes); !false_tones.empty())
        out += "\n" + false_tones + "\n";
    if (const auto reasons = words::usual_sentences(speech, notes); !reasons.empty()) {
        out += "\n" + words.say(words::Sentence::chart_why_heading) + ". " +
               words.say(words::Sentence::chart_why_how) + "\n";
        for (const std::string& reason : reasons)
            out += reason + "\n";
    }
    if (slide) add_slide(out, chart.kind);
    for (const std::string& sentence : words::reach_sentences(speech))
        out += sentence + "\n";
    return out;
}

std::string note_table(const pages::ChartInputs& chart, units::Pitch note) {
    const auto entry = horns::chart_note(chart.kind, note);
    if (!entry)
        throw units::Refusal(
            fmt::format("--note {}: {} has no way to sound it.", units::file_name(note), chart.kind.name));
    const words::Words words;
    const auto speech = speech_of(chart, words);
    const bool slide = chart.kind.hand_slide.has_value();
    std::string out = fmt::format("{} on {}, usual: {}. {}\n\n",
                                  words::note_name_with_octave(note, chart.style), chart.kind.name,
                                  fingering(chart.kind, entry->usual), words::usual_sentence(speech, *entry));
    add_line(out, fmt::format("{:<10} {:>7} {:>6} {} {:>7}", "fingering", "partial", "cents",
                              slide ? " slide mm" : "", "ranked"));
    for (const Way& way : horns::possible_fingerings(chart.kind, note)) {
        const units::Cents lean = lean_of(chart, note, way);
        const units::Cents placed = placed_lean(chart, note, way);
        const bool false_tone = way.tone == horns::Tone::false_tone;
        std::string line = padded(fingering(chart.kind, way), 11) +
                           fmt::format("{:>7} ", false_tone ? "" : std::to_string(way.partial)) +
                           fmt::format("{:>6} ", cents(lean));
        if (slide) line += fmt::format("{:>9}", words::slide_move(chart.kind, way.fingering, placed));
        const std::string where =
            slide && way.within_reach ? where_on_slide(words, chart.kind, note, way, placed) : "";
        add_line(out, line + fmt::format(" {:>7.1f}  {} {}", way.cost.value(), remark(way), where));
    }
    return out;
}

}  // namespace lowledger::batch
