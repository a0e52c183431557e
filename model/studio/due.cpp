#include "model/studio/due.h"

#include <algorithm>
#include <set>

namespace lowledger::studio {
namespace {

bool same_thing(const Upkeep& a, const Upkeep& b) {
    return a.horn == b.horn && a.mouthpiece == b.mouthpiece && a.work == b.work;
}

bool done_since(std::span<const Upkeep> all, const Upkeep& entry) {
    return std::ranges::any_of(all, [&](const Upkeep& other) {
        return same_thing(entry, other) && other.done_on && *entry.done_on < *other.done_on;
    });
}

}  // namespace

bool holds_on(Date from, const std::optional<Date>& until, Date on) {
    return from <= on && (!until || on < *until);
}

bool holds_on(const Loan& loan, Date on) {
    return holds_on(loan.from, loan.until, on);
}

bool holds_on(const Assignment& assignment, Date on) {
    return holds_on(assignment.from, assignment.until, on);
}

bool share_a_day(Date from, const std::optional<Date>& until, Date other_from,
                 const std::optional<Date>& other_until) {
    const Date first = std::max(from, other_from);
    return holds_on(from, until, first) && holds_on(other_from, other_until, first);
}

bool is_overdue(const Loan& loan, Date today) {
    return loan.due && *loan.due < today && holds_on(loan, today);
}

std::vector<Upkeep> due(std::span<const Upkeep> upkeep, Date today) {
    std::vector<Upkeep> found;
    for (const Upkeep& entry : upkeep) {
        const bool again = entry.done_on && entry.next_due && *entry.next_due <= today;
        if (!entry.done_on || (again && !done_since(upkeep, entry))) found.push_back(entry);
    }
    return found;
}

bool is_for(const Assignment& assignment, Date on) {
    return holds_on(assignment, on) && assignment.days.has(on.weekday());
}

PracticeCount practised(const Assignment& assignment, std::span<const PracticeEntry> entries,
                        StudentId student, Date first, Date last) {
    PracticeCount count;
    for (Date day = std::max(first, assignment.from); day <= last; day = day + 1) {
        if (!holds_on(assignment, day)) break;
        count.due += is_for(assignment, day) ? 1 : 0;
    }
    std::set<Date> days;
    for (const PracticeEntry& entry : entries) {
        if (entry.assignment == assignment.id && entry.student == student && first <= entry.on &&
            entry.on <= last)
            days.insert(entry.on);
    }
    count.done = static_cast<int>(days.size());
    return count;
}

Assignment renewed(Assignment& old, Date from, std::optional<Date> until) {
    Assignment next = old;
    next.id = {};
    next.from = from;
    next.until = until;
    next.end = Assignment::End::at_its_time;
    next.follows = old.id;
    // One that ran out before keeps its day.
    if (!old.until || from < *old.until) old.until = std::max(from, old.from);
    old.end = Assignment::End::renewed;
    return next;
}

void stop(Assignment& assignment, Date on) {
    const Date end = std::max(on, assignment.from);
    if (assignment.until && *assignment.until <= end) return;
    assignment.until = end;
    assignment.end = Assignment::End::stopped;
}

}  // namespace lowledger::studio
