#include "model/tuning/inputs.h"

#include <algorithm>
#include <optional>

namespace lowledger::tuning {

std::map<std::string, units::Millimetres> known_positions(std::span<const studio::SlidePosition> history,
                                                          std::span<const studio::TuningSheet> sheets,
                                                          studio::Date on) {
    struct Known {
        studio::Date since;
        units::Millimetres position;
    };
    std::map<std::string, Known> latest;
    const auto take = [&](const std::string& slide, studio::Date since, units::Millimetres position) {
        if (since > on) return;
        const auto [found, is_new] = latest.try_emplace(slide, Known{since, position});
        if (!is_new && found->second.since <= since) found->second = {since, position};
    };
    std::vector<const studio::TuningSheet*> by_age;
    for (const auto& sheet : sheets)
        by_age.push_back(&sheet);
    std::ranges::sort(by_age, {}, [](const auto* sheet) { return std::pair(sheet->on, sheet->id); });
    for (const auto* sheet : by_age)
        for (const auto& [slide, position] : sheet->positions)
            take(slide, sheet->on, position);

    std::vector<const studio::SlidePosition*> entries;
    for (const auto& entry : history)
        if (entry.origin != studio::SlidePosition::Origin::start) entries.push_back(&entry);
    std::ranges::sort(entries, {}, [](const auto* entry) { return std::pair(entry->on, entry->id); });
    for (const auto* entry : entries)
        take(entry->slide, entry->on, entry->position);

    std::map<std::string, units::Millimetres> positions;
    for (const auto& [slide, known] : latest)
        positions.emplace(slide, known.position);
    return positions;
}

TuningInputs inputs_of(const studio::StudioFacts& facts, const studio::Student& student,
                       const studio::Horn& horn, const horns::HornKind& kind,
                       std::span<const studio::SlidePosition> history,
                       std::span<const studio::TuningSheet> sheets, studio::Date today) {
    TuningInputs inputs{.kind = kind,
                        .slides = horn.slides,
                        .positions = {},
                        .tolerance = {},
                        .sheets = {},
                        .today = today,
                        .room_today = {},
                        .hand = {}};
    inputs.level = student.level;
    inputs.tolerance = student.tolerance;
    inputs.studio_a4 = facts.a4;
    inputs.tuner_a4 = facts.a4;
    inputs.usual_room = facts.usual_room;
    std::vector<studio::TuningSheet> of_horn;
    for (const auto& sheet : sheets) {
        if (sheet.horn != horn.id || sheet.on > today) continue;
        of_horn.push_back(sheet);
        if (sheet.student == student.id) inputs.sheets.push_back(sheet);
    }
    inputs.positions = known_positions(history, of_horn, today);
    const auto newest = std::ranges::max_element(
        inputs.sheets, {}, [](const auto& sheet) { return std::pair(sheet.on, sheet.id); });
    if (newest != inputs.sheets.end()) {
        inputs.tuner_a4 = newest->tuner_a4;
        if (newest->on == today) inputs.room_today = newest->room;
    }
    return inputs;
}

}  // namespace lowledger::tuning
