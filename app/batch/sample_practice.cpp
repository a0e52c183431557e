#include <algorithm>
#include <array>
#include <fmt/format.h>

#include "app/batch/sample_story.h"
#include "model/routines/library.h"
#include "model/studio/due.h"

namespace lowledger::batch {

namespace {

using studio::Assignment;
using studio::Date;
using studio::Routine;

/// A word of the library's for the horn that the student plays.
std::string_view family(const SampleStory& story, const SampleStudent& student) {
    for (const SampleHorn& horn : story.sources.horns) {
        if (student.plays.empty() || horn.mark != student.plays.back().horn) continue;
        for (const std::string_view word : {"trombone", "euphonium", "baritone"})
            if (horn.kind.find(word) != std::string::npos) return word;
    }
    return "tuba";
}

template <typename T>
bool fits(const std::vector<T>& allowed, const T& one) {
    return allowed.empty() || std::ranges::find(allowed, one) != allowed.end();
}

/// What is given to students through a term, and what they do of it.
class Practice {
  public:
    explicit Practice(SampleStory& story) : story_(story) {}

    void tell() {
        for (const Routine& routine : routines::library()) {
            routines_.push_back(routine);
            routines_.back().id = story_.edit.add(routine);
        }
        for (const studio::Term& term : story_.terms) {
            if (story_.as_of < term.first) continue;
            for (const SampleStudent& student : story_.sources.students)
                give(term, student);
            give_groups(term);
        }
    }

  private:
    [[nodiscard]] std::vector<const Routine*> fitting(const SampleStudent& student) const {
        const std::string word(family(story_, student));
        std::vector<const Routine*> out;
        for (const Routine& routine : routines_)
            if (fits(routine.levels, student.record.level) && fits(routine.horns, word))
                out.push_back(&routine);
        return out;
    }

    /// Every third week another routine for six weeks, so that two go on at a time.
    void give(const studio::Term& term, const SampleStudent& student) {
        const Date joined = story_.day(student.plays.front().from_week, student.lesson_day + 1);
        const auto left_in = student.plays.back().until_week;
        const Date left = student.record.archived && left_in ? story_.day(*left_in, 1) : term.last + 1;
        const std::vector<const Routine*> routines = fitting(student);
        SampleRandom start(story_.seed, "routines " + student.record.name);
        auto at = static_cast<std::size_t>(start.uniform() * static_cast<double>(routines.size()));
        const Date first = term.first + student.lesson_day;
        for (int week = 0; first + 7 * week <= std::min(story_.as_of, term.last); week += 3) {
            const Date from = first + 7 * week;
            const Routine& routine = *routines[at++ % routines.size()];
            if (from < joined || left <= from) continue;
            give_one(term, student, routine, from);
        }
    }

    void give_one(const studio::Term& term, const SampleStudent& student, const Routine& routine, Date from) {
        static const std::array<studio::Weekdays, 4> days = {
            studio::Weekdays{}, studio::Weekdays{1, 2, 3, 4, 5}, studio::Weekdays{1, 3, 5, 7},
            studio::Weekdays{2, 4, 6}};
        static const std::array<std::string_view, 4> amounts = {"", "", "Five minutes", "Twice, slowly"};
        SampleRandom random = story_.random("assignment", student.record.name, from);
        const auto one_of_four = [&] { return static_cast<std::size_t>(random.uniform() * 4.0); };
        Assignment given{.id = {},
                         .routine = routine.id,
                         .student = story_.students.at(student.record.name),
                         .from = from,
                         .until = std::min(from + 42, term.last + 1),
                         .days = days.at(one_of_four()),
                         .amount = std::string(amounts.at(one_of_four()))};
        const double drawn = random.uniform();
        if (drawn < 0.08 && from + 21 < story_.as_of) studio::stop(given, from + 21);
        file(term, student, given);
        if (drawn < 0.85 || *given.until > story_.as_of) return;
        Assignment next = studio::renewed(given, *given.until, std::min(*given.until + 21, term.last + 1));
        if (*next.until <= next.from) return;
        if (drawn > 0.93) {
            given.end = Assignment::End::changed;
            next.amount = "Three minutes more than before";
        }
        story_.edit.update(given);
        file(term, student, next);
    }

    void file(const studio::Term& term, const SampleStudent& student, Assignment& given) {
        given.id = story_.edit.add(given);
        if (story_.as_of <= term.last) practise(student, given);
    }

    /// Some students practise almost every day, some one in three.
    void practise(const SampleStudent& student, const Assignment& given) {
        const double diligence =
            0.35 + 0.55 * SampleRandom(story_.seed, "diligence " + student.record.name).uniform();
        for (Date on = given.from + 1; on < std::min(*given.until, story_.as_of); on = on + 1) {
            SampleRandom random =
                story_.random(fmt::format("practice {}", given.id.number), student.record.name, on);
            if (!studio::is_for(given, on) || random.uniform() > diligence) continue;
            studio::PracticeEntry entry{{}, *given.student, on, given.id, {}, {}};
            const double drawn = random.uniform();
            if (drawn < 0.25) entry.length = std::chrono::minutes(drawn < 0.12 ? 10 : 15);
            story_.edit.add(entry);
        }
    }

    void give_groups(const studio::Term& term) {
        for (const SampleGroup& told : story_.sources.book.groups) {
            const auto routine = std::ranges::find(routines_, told.routine, &Routine::key);
            if (routine == routines_.end()) continue;
            Assignment given{.id = {},
                             .routine = routine->id,
                             .group = story_.groups.at(told.name),
                             .from = term.first + (told.weekday - 1),
                             .until = term.last + 1,
                             .days = studio::Weekdays{2, 4, 7}};
            story_.edit.add(given);
        }
    }

    SampleStory& story_;
    std::vector<Routine> routines_;
};

}  // namespace

void tell_practice(SampleStory& story) {
    Practice(story).tell();
}

}  // namespace lowledger::batch
