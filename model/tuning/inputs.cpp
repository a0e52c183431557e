#include "model/tuning/inputs.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "model/studio/kind_of.h"

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

namespace {

void add_horn(TuningInputs& inputs, const Others::OfStudent& horn, studio::StudentId student,
              std::span<const studio::TuningSheet> sheets) {
    OtherHorn other{horn.kind};
    for (const studio::TuningSheet& sheet : sheets) {
        if (sheet.horn == horn.horn && sheet.student == student && sheet.on <= inputs.today)
            other.sheets.push_back(sheet);
    }
    if (other.sheets.empty()) return;
    other.positions = known_positions(horn.history, other.sheets, inputs.today);
    inputs.other_horns.push_back(std::move(other));
}

void add_player(TuningInputs& inputs, studio::StudentId player, studio::Level level,
                const std::vector<studio::TuningSheet>& of_horn) {
    OtherPlayer other{level};
    for (const studio::TuningSheet& sheet : of_horn) {
        if (sheet.student == player) other.sheets.push_back(sheet);
    }
    if (!other.sheets.empty()) inputs.other_players.push_back(std::move(other));
}

}  // namespace

TuningInputs inputs_of(const studio::StudioFacts& facts, const studio::Student& student,
                       const studio::Horn& horn, const horns::HornKind& kind,
                       std::span<const studio::SlidePosition> history,
                       std::span<const studio::TuningSheet> sheets, studio::Date today,
                       const Others& others) {
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
    for (const Others::OfStudent& other : others.horns)
        add_horn(inputs, other, student.id, sheets);
    for (const auto& [player, level] : others.players)
        add_player(inputs, player, level, of_horn);
    return inputs;
}

TuningInputs inputs_of_studio(
    const studio::StudioFacts& facts, const studio::Student& student, const studio::Horn& horn,
    const horns::HornKind& kind, std::span<const studio::Student> students,
    std::span<const studio::Horn> horns,
    const std::function<std::vector<studio::SlidePosition>(studio::HornId)>& history_of,
    std::span<const studio::TuningSheet> of_student, std::span<const studio::TuningSheet> of_horn,
    studio::Date today) {
    Others others;
    std::vector<studio::TuningSheet> sheets(of_horn.begin(), of_horn.end());
    for (const studio::Student& player : students) {
        if (player.id != student.id) others.players.emplace(player.id, player.level);
    }
    for (const studio::TuningSheet& sheet : of_student) {
        if (sheet.horn != horn.id) sheets.push_back(sheet);
    }
    for (const studio::Horn& other : horns) {
        const bool read =
            std::ranges::find(of_student, other.id, &studio::TuningSheet::horn) != of_student.end();
        if (read && other.id != horn.id)
            others.horns.push_back({other.id, studio::kind_of(other), history_of(other.id)});
    }
    return inputs_of(facts, student, horn, kind, history_of(horn.id), sheets, today, others);
}

}  // namespace lowledger::tuning
