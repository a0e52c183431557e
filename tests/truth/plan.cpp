#include "tests/truth/plan.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "model/horns/chart.h"

namespace lowledger::truth {
namespace {

bool is_in(const std::vector<Played>& notes, units::Pitch note, const horns::Fingering& fingering) {
    return std::ranges::any_of(
        notes, [&](const Played& played) { return played.note == note && played.fingering == fingering; });
}

std::vector<Played> plan(const horns::HornKind& kind, studio::Level level, std::size_t most) {
    const World world(kind, level, {today}, {}, 1);
    const Places written = designed_places(kind);
    tuning::TuningInputs inputs = inputs_for(world, written);
    std::vector<Played> notes = tuning_notes(kind);
    while (notes.size() < most) {
        Sitting sitting{.on = today, .places = world.truly(written)};
        inputs.sheets = {sheet_of(world, sitting, written, notes, 2)};
        const auto next = tuning::answer(inputs).next_note;
        if (!next || is_in(notes, next->note, next->fingering)) break;
        notes.push_back(way_of(kind, next->note, next->fingering));
    }
    for (const horns::ChartNote& note : horns::chart(kind)) {
        if (notes.size() >= most) break;
        if (kind.core_range.contains(note.note) && !is_in(notes, note.note, note.usual.fingering)) {
            notes.push_back({note.note, note.usual.fingering, note.usual.partial});
        }
    }
    return notes;
}

}  // namespace

const horns::HornKind& valved_kind(int number) {
    constexpr std::array ids{"bbb-tuba-3",   "bbb-tuba-4",     "euphonium-4-comp", "baritone-3",
                             "sousaphone-3", "eb-tuba-4-comp", "cc-tuba-4",        "f-tuba-4"};
    return *horns::find_kind(horns::built_in_kinds(), ids[static_cast<std::size_t>(number) % ids.size()]);
}

const std::vector<Played>& planned_notes(const horns::HornKind& kind, studio::Level level, std::size_t most) {
    static std::map<std::pair<std::string, studio::Level>, std::vector<Played>> plans;
    auto& planned = plans[{kind.id, level}];
    if (planned.empty()) planned = plan(kind, level, most);
    return planned;
}

MeanLean mean_lean(const World& world, const tuning::SettingsQuestion& question,
                   const tuning::SlideSettings& settings, const Places& at) {
    MeanLean mean;
    double weight = 0.0;
    for (std::size_t n = 0; n < question.notes.size(); ++n) {
        const double of_note = question.notes[n].weight;
        if (of_note == 0.0) continue;
        const tuning::PlayedNote& way = settings.notes[n].way;
        const Played played{question.notes[n].note, way.fingering, way.partial,
                            question.constants.hand_slide_home};
        mean.answered += of_note * std::abs(world.answered(played, at, 0).value());
        mean.heard += of_note * std::abs(world.heard(played, at, 0).value());
        weight += of_note;
    }
    return {mean.answered / weight, mean.heard / weight};
}

}  // namespace lowledger::truth
