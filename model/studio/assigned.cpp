#include "model/studio/assigned.h"

#include <algorithm>
#include <string>

#include "model/studio/calendar.h"

namespace lowledger::studio {
namespace {

std::string small_letters(std::string text) {
    std::ranges::transform(text, text.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return text;
}

}  // namespace

std::vector<Assignment> assigned_on(std::span<const Assignment> assignments, std::span<const Group> groups,
                                    StudentId student, Date on) {
    const auto is_theirs = [&](const Assignment& assignment) {
        if (!assignment.group) return assignment.student == student;
        const auto group = std::ranges::find(groups, *assignment.group, &Group::id);
        if (group == groups.end()) return false;
        const auto members = members_on(*group, on);
        return std::ranges::find(members, student) != members.end();
    };
    std::vector<Assignment> now;
    std::ranges::copy_if(assignments, std::back_inserter(now), [&](const Assignment& assignment) {
        return holds_on(assignment, on) && is_theirs(assignment);
    });
    return now;
}

std::optional<Assignment> renewed_for_as_long(Assignment& old, Date today) {
    if (!old.until || old.from >= today) return std::nullopt;
    const int length = *old.until - old.from;
    return renewed(old, today, today + length);
}

bool is_for(const Routine& routine, Level level) {
    return routine.levels.empty() || std::ranges::find(routine.levels, level) != routine.levels.end();
}

bool is_for(const Routine& routine, const horns::HornKind& kind) {
    if (routine.horns.empty()) return true;
    const std::string name = small_letters(kind.name);
    return std::ranges::any_of(routine.horns, [&](const std::string& horn) {
        return name.find(small_letters(horn)) != std::string::npos;
    });
}

}  // namespace lowledger::studio
