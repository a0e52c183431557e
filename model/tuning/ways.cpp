#include "model/tuning/ways.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "model/horns/chart.h"
#include "model/units/refusal.h"

namespace lowledger::tuning {
namespace {

/// Alternates that are worth a thought: on a partial from the second to the eighth that charts use, not far
/// off, the best two.
std::vector<horns::Way> useful_alternates(const horns::ChartNote& note) {
    constexpr std::size_t most = 2;
    constexpr double furthest = 30.0;
    std::vector<horns::Way> useful;
    for (const horns::Way& way : note.alternates) {
        const bool useful_partial = way.partial >= 2 && way.partial <= 8 && way.partial != 7;
        if (way.tone == horns::Tone::partial && useful_partial && way.within_reach &&
            std::abs(way.lean.value()) <= furthest && useful.size() < most) {
            useful.push_back(way);
        }
    }
    return useful;
}

void add_way(std::vector<WayToPlay>& ways, const WayToPlay& way) {
    const bool there = std::ranges::any_of(ways, [&](const WayToPlay& other) {
        return other.note == way.note && other.fingering == way.fingering && other.partial == way.partial;
    });
    if (!there) ways.push_back(way);
}

void add_chart_note(std::vector<WayToPlay>& ways, const horns::ChartNote& note, bool alternates) {
    if (note.usual.tone != horns::Tone::false_tone) {
        add_way(ways, {note.note, note.usual.fingering, note.usual.partial, true});
    }
    if (!alternates) return;
    for (const horns::Way& way : useful_alternates(note))
        add_way(ways, {note.note, way.fingering, way.partial, false});
}

bool has_usual(const std::vector<WayToPlay>& ways, units::Pitch note) {
    return std::ranges::any_of(ways, [&](const WayToPlay& way) { return way.note == note && way.usual; });
}

/// A fingering that the chart does not have is an alternate where the note has a usual one.
void add_played(std::vector<WayToPlay>& ways, const horns::HornKind& kind, units::Pitch note,
                const horns::Fingering& fingering, int partial, bool alternates) {
    if (!has_usual(ways, note)) {
        if (const auto charted = horns::chart_note(kind, note)) add_chart_note(ways, *charted, alternates);
    }
    add_way(ways, {note, fingering, partial, !has_usual(ways, note)});
}

}  // namespace

bool may_use_alternates(const horns::HornKind& kind, studio::Level level) {
    return level != studio::Level::beginner || kind.alternates_for_beginners;
}

std::optional<int> partial_of(const horns::HornKind& kind, const studio::TuningSheet& sheet,
                              const studio::Reading& reading) {
    const auto labels = kind.valve_labels();
    const std::string what = fmt::format("{} with {} on the sheet of {}", units::file_name(reading.note),
                                         horns::file_text(reading.fingering, labels), sheet.on.iso());
    if (!kind.allows(reading.fingering)) {
        throw units::Refusal(fmt::format("{}: the {} has no such fingering; correct it.", what, kind.name));
    }
    constexpr double beyond = 100.0;
    if (!std::isfinite(reading.cents.value()) || std::abs(reading.cents.value()) > beyond) {
        throw units::Refusal(fmt::format(
            "{} reads {:g} cents; a reading lies within 100 cents of its note. Was it another note?", what,
            reading.cents.value()));
    }
    const auto likeliest = horns::sounding_partial(kind, reading.fingering, reading.note);
    if (likeliest) return reading.partial > 0 ? reading.partial : likeliest->partial;
    for (const horns::Way& way : horns::possible_fingerings(kind, reading.note)) {
        if (way.tone == horns::Tone::false_tone && way.fingering == reading.fingering) return std::nullopt;
    }
    throw units::Refusal(
        fmt::format("{}: this fingering cannot sound that note; correct the note or the fingering.", what));
}

std::vector<WayToPlay> ways_to_play(const TuningInputs& inputs,
                                    const std::vector<const studio::TuningSheet*>& used) {
    const horns::HornKind& kind = inputs.kind;
    const bool alternates = may_use_alternates(kind, inputs.level);
    std::vector<WayToPlay> ways;
    for (const horns::ChartNote& note : horns::chart(kind))
        add_chart_note(ways, note, alternates);
    for (const horns::TuningStep& step : kind.tuning_order) {
        if (const auto at = horns::sounding_partial(kind, step.fingering, step.note)) {
            add_played(ways, kind, step.note, step.fingering, at->partial, alternates);
        }
    }
    for (const studio::TuningSheet* sheet : used) {
        for (const studio::Reading& reading : sheet->readings) {
            if (const auto partial = partial_of(kind, *sheet, reading)) {
                add_played(ways, kind, reading.note, reading.fingering, *partial, alternates);
            }
        }
    }
    std::ranges::stable_sort(ways, [](const WayToPlay& a, const WayToPlay& b) {
        return a.note != b.note ? a.note < b.note : a.usual > b.usual;
    });
    return ways;
}

}  // namespace lowledger::tuning
