#pragma once

#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "model/studio/lessons.h"
#include "model/studio/timetable.h"

namespace lowledger::studio {

/// A day of the term on which there are lessons.
bool is_school_day(const Term& term, Date on);

/// The term that a day lies in.
std::optional<Term> term_on(std::span<const Term> terms, Date on);

/// The days of the slot's lessons in its term, in order: holidays are skipped and do not shift an every-other
/// week.
std::vector<Date> days_of(const TimetableSlot& slot, const Term& term);

/// The lessons that the timetable makes of a term, planned, by day and time. Those whose slot and day are
/// among `there` already (kept, moved, cancelled or still planned) are left out, so that it may be asked
/// again at any time. Slots of other terms make none.
std::vector<Lesson> lessons_to_make(const Term& term, std::span<const TimetableSlot> slots,
                                    std::span<const Lesson> there);

/// Planned lessons of the term that the timetable no longer makes: their slot is gone or changed, or a
/// holiday was put there. Lessons arranged by themselves are not among them.
std::vector<LessonId> lessons_no_longer_made(const Term& term, std::span<const TimetableSlot> slots,
                                             std::span<const Lesson> there);

/// Whether a lesson takes the teacher's time: planned or kept.
bool takes_place(const Lesson& lesson);

/// Pairs of places in `lessons` that share some of the teacher's time, the earlier one first. Lessons that do
/// not take place clash with nothing; one that ends when the next begins does not either.
std::vector<std::pair<std::size_t, std::size_t>> clashes(std::span<const Lesson> lessons);

/// The same for the timetable of a term: pairs of slots that ever share time.
std::vector<std::pair<std::size_t, std::size_t>> clashes(std::span<const TimetableSlot> slots,
                                                         const Term& term);

/// Whether a lesson of this state is usually made up: it was cancelled, or missed with notice (common
/// practice; the teacher decides).
bool usually_made_up(Lesson::State state);

/// A lesson that is owed, and the one that was arranged to make up for it, if one was.
struct OwedLesson {
    LessonId missed;
    /// Planned; a kept one settles it.
    std::optional<LessonId> arranged{};
    bool operator==(const OwedLesson&) const = default;
};

/// What is still owed among these lessons, oldest first.
std::vector<OwedLesson> make_ups_owed(std::span<const Lesson> lessons);

/// The lesson on another day and time that stands for `lesson`; that one's state becomes `moved`.
Lesson moved(Lesson& lesson, Date on, TimeOfDay starts);

/// Who belongs to the group on that day, in the order they are called.
std::vector<StudentId> members_on(const Group& group, Date on);

}  // namespace lowledger::studio
