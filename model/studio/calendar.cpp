#include "model/studio/calendar.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace lowledger::studio {
namespace {

using Place = std::pair<TimetableSlotId, Date>;

/// The slot and day of every lesson that was made from a slot.
std::set<Place> places_of(std::span<const Lesson> lessons) {
    std::set<Place> places;
    for (const Lesson& lesson : lessons)
        if (lesson.slot) places.emplace(*lesson.slot, lesson.on);
    return places;
}

Lesson planned_lesson(const TimetableSlot& slot, Date on) {
    return {.id = {},
            .student = slot.student,
            .group = slot.group,
            .slot = slot.id,
            .on = on,
            .starts = slot.starts,
            .length = slot.length,
            .room = slot.room};
}

bool share_time(TimeOfDay a, std::chrono::minutes a_length, TimeOfDay b, std::chrono::minutes b_length) {
    return b - a < a_length && a - b < b_length;
}

bool made_by(const TimetableSlot& slot, const Term& term, const Lesson& lesson) {
    const std::vector<Date> days = days_of(slot, term);
    return std::ranges::binary_search(days, lesson.on) && slot.starts == lesson.starts &&
           slot.length == lesson.length && slot.student == lesson.student && slot.group == lesson.group;
}

}  // namespace

bool is_school_day(const Term& term, Date on) {
    if (on < term.first || term.last < on) return false;
    return std::ranges::none_of(
        term.holidays, [&](const Holiday& holiday) { return holiday.first <= on && on <= holiday.last; });
}

std::optional<Term> term_on(std::span<const Term> terms, Date on) {
    const auto found =
        std::ranges::find_if(terms, [&](const Term& term) { return term.first <= on && on <= term.last; });
    if (found == terms.end()) return std::nullopt;
    return *found;
}

std::vector<Date> days_of(const TimetableSlot& slot, const Term& term) {
    std::vector<Date> days;
    if (slot.term != term.id || slot.every_weeks < 1) return days;
    const Date first = std::max(slot.from.value_or(term.first), term.first);
    const Date end = std::min(slot.until.value_or(term.last + 1), term.last + 1);
    const int wait = (slot.weekday - first.weekday() + 7) % 7;
    for (Date day = first + wait; day < end; day = day + 7 * slot.every_weeks)
        if (is_school_day(term, day)) days.push_back(day);
    return days;
}

std::vector<Lesson> lessons_to_make(const Term& term, std::span<const TimetableSlot> slots,
                                    std::span<const Lesson> there) {
    const std::set<Place> made = places_of(there);
    std::vector<Lesson> lessons;
    for (const TimetableSlot& slot : slots) {
        for (const Date day : days_of(slot, term))
            if (!made.contains({slot.id, day})) lessons.push_back(planned_lesson(slot, day));
    }
    std::ranges::stable_sort(lessons, {}, [](const Lesson& l) { return std::tuple(l.on, l.starts); });
    return lessons;
}

std::vector<LessonId> lessons_no_longer_made(const Term& term, std::span<const TimetableSlot> slots,
                                             std::span<const Lesson> there) {
    std::vector<LessonId> gone;
    for (const Lesson& lesson : there) {
        if (!lesson.slot || lesson.state != Lesson::State::planned) continue;
        if (lesson.on < term.first || term.last < lesson.on) continue;
        const auto slot = std::ranges::find(slots, *lesson.slot, &TimetableSlot::id);
        if (slot == slots.end() || !made_by(*slot, term, lesson)) gone.push_back(lesson.id);
    }
    return gone;
}

bool takes_place(const Lesson& lesson) {
    return lesson.state == Lesson::State::planned || lesson.state == Lesson::State::kept;
}

std::vector<std::pair<std::size_t, std::size_t>> clashes(std::span<const Lesson> lessons) {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < lessons.size(); ++i)
        if (takes_place(lessons[i])) order.push_back(i);
    const auto start = [&](std::size_t i) { return std::tuple(lessons[i].on, lessons[i].starts); };
    std::ranges::stable_sort(order, {}, start);
    std::vector<std::pair<std::size_t, std::size_t>> found;
    for (std::size_t i = 0; i < order.size(); ++i) {
        const Lesson& one = lessons[order[i]];
        // A lesson later that day may end before this one does, so all until the next day are looked at.
        for (std::size_t j = i + 1; j < order.size() && lessons[order[j]].on == one.on; ++j) {
            const Lesson& other = lessons[order[j]];
            if (share_time(one.starts, one.length, other.starts, other.length))
                found.emplace_back(order[i], order[j]);
        }
    }
    return found;
}

std::vector<std::pair<std::size_t, std::size_t>> clashes(std::span<const TimetableSlot> slots,
                                                         const Term& term) {
    std::vector<std::pair<std::size_t, std::size_t>> found;
    for (std::size_t i = 0; i < slots.size(); ++i) {
        for (std::size_t j = i + 1; j < slots.size(); ++j) {
            const TimetableSlot& one = slots[i];
            const TimetableSlot& other = slots[j];
            if (one.weekday != other.weekday ||
                !share_time(one.starts, one.length, other.starts, other.length))
                continue;
            const std::vector<Date> days = days_of(one, term);
            const bool same_day = std::ranges::any_of(
                days_of(other, term), [&](Date day) { return std::ranges::binary_search(days, day); });
            if (same_day) found.push_back(other.starts < one.starts ? std::pair(j, i) : std::pair(i, j));
        }
    }
    return found;
}

bool usually_made_up(Lesson::State state) {
    return state == Lesson::State::cancelled || state == Lesson::State::missed_with_notice;
}

std::vector<OwedLesson> make_ups_owed(std::span<const Lesson> lessons) {
    std::vector<const Lesson*> owed;
    for (const Lesson& lesson : lessons)
        if (lesson.make_up_owed) owed.push_back(&lesson);
    std::ranges::sort(owed, {}, [](const Lesson* l) { return std::tuple(l->on, l->starts, l->id); });
    std::vector<OwedLesson> still;
    for (const Lesson* missed : owed) {
        OwedLesson entry{.missed = missed->id};
        bool settled = false;
        for (const Lesson& lesson : lessons) {
            if (lesson.instead_of != missed->id) continue;
            settled = settled || lesson.state == Lesson::State::kept;
            if (lesson.state == Lesson::State::planned) entry.arranged = lesson.id;
        }
        if (!settled) still.push_back(entry);
    }
    return still;
}

Lesson moved(Lesson& lesson, Date on, TimeOfDay starts) {
    Lesson later = lesson;
    lesson.state = Lesson::State::moved;
    lesson.make_up_owed = false;
    later.id = {};
    later.slot.reset();
    later.on = on;
    later.starts = starts;
    later.state = Lesson::State::planned;
    later.make_up_owed = false;
    later.instead_of = lesson.id;
    later.attendance.clear();
    return later;
}

std::vector<StudentId> members_on(const Group& group, Date on) {
    std::vector<StudentId> members;
    for (const GroupMember& member : group.members)
        if (member.from <= on && (!member.until || on < *member.until)) members.push_back(member.student);
    return members;
}

}  // namespace lowledger::studio
