#include "model/tuning/families.h"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "model/tuning/follow_reading.h"

namespace lowledger::tuning {
namespace {

/// A rule may cost so much more than choosing note by note, as a part.
constexpr double most_more = 0.1;

/// The notes of each usual fingering, by index.
std::vector<std::pair<horns::Fingering, std::vector<std::size_t>>> families(const SettingsQuestion& question,
                                                                            const SlideProblem& problem) {
    std::vector<std::pair<horns::Fingering, std::vector<std::size_t>>> all;
    for (std::size_t n = 0; n < question.notes.size(); ++n) {
        if (problem.notes[n].weight <= 0.0) continue;
        const horns::Fingering& usual = question.notes[n].ways.front().fingering;
        auto at = std::ranges::find_if(all, [&](const auto& family) { return family.first == usual; });
        if (at == all.end()) at = all.insert(all.end(), {usual, {}});
        at->second.push_back(n);
    }
    return all;
}

std::optional<std::size_t> way_with(const QuestionNote& note, const horns::Fingering& fingering) {
    for (std::size_t w = 1; w < note.ways.size(); ++w) {
        const PlayedNote& way = note.ways[w];
        if (way.fingering == fingering && way.partial == note.ways.front().partial) return w;
    }
    return std::nullopt;
}

/// The way of every note of the family with that fingering; empty where one has none.
std::vector<std::size_t> ways_with(const SettingsQuestion& question, const std::vector<std::size_t>& notes,
                                   const horns::Fingering& fingering) {
    std::vector<std::size_t> ways;
    for (const std::size_t n : notes) {
        const auto way = way_with(question.notes[n], fingering);
        if (!way) return {};
        ways.push_back(*way);
    }
    return ways;
}

}  // namespace

std::vector<FamilyRule> family_rules(const SettingsQuestion& question, const SlideSettings& settings) {
    const SlideProblem problem = problem_of(question);
    const Chosen chosen = chosen_by(question, settings);
    const auto cost = [&](const Choice& ways) {
        return units::SquareCents(objective_at(problem, chosen.at, ways));
    };
    std::vector<FamilyRule> rules;
    for (const auto& [usual, notes] : families(question, problem)) {
        if (notes.size() < 2) continue;
        for (const PlayedNote& way : question.notes[notes.front()].ways) {
            const auto ways = ways_with(question, notes, way.fingering);
            if (ways.empty()) continue;
            Choice by_rule = chosen.ways;
            Choice by_usual = chosen.ways;
            FamilyRule rule{usual, way.fingering, {}, {}, {}, cost(chosen.ways)};
            for (std::size_t i = 0; i < notes.size(); ++i) {
                by_rule[notes[i]] = ways[i];
                by_usual[notes[i]] = 0;
                rule.notes.push_back(question.notes[notes[i]].note);
            }
            rule.by_rule = cost(by_rule);
            rule.by_usual = cost(by_usual);
            if (rule.by_rule < rule.by_usual && rule.by_rule <= (1.0 + most_more) * rule.by_choice)
                rules.push_back(std::move(rule));
        }
    }
    std::ranges::stable_sort(rules, {}, &FamilyRule::by_rule);
    return rules;
}

}  // namespace lowledger::tuning
