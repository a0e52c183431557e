#include "app/paper/of_students.h"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "model/studio/calendar.h"
#include "model/studio/due.h"
#include "model/studio/kind_of.h"
#include "model/studio/note_style.h"
#include "model/tuning/figures.h"
#include "reports/words/names.h"

namespace lowledger::paper {
namespace {

using studio::Attendance;
using studio::Lesson;

/// How this student's lesson went: in a group's that was kept, as attendance says.
Lesson::State state_for(const Lesson& lesson, studio::StudentId student) {
    if (lesson.state != Lesson::State::kept) return lesson.state;
    for (const auto& attendance : lesson.attendance) {
        if (attendance.student != student) continue;
        if (attendance.state == Attendance::State::missed_with_notice)
            return Lesson::State::missed_with_notice;
        if (attendance.state == Attendance::State::missed_without_notice)
            return Lesson::State::missed_without_notice;
    }
    return lesson.state;
}

pages::TermSummary::Lessons counted(const std::vector<Lesson>& lessons, studio::StudentId student) {
    pages::TermSummary::Lessons counts;
    for (const auto& lesson : lessons) {
        switch (state_for(lesson, student)) {
            case Lesson::State::kept:
                ++counts.kept;
                break;
            case Lesson::State::missed_with_notice:
            case Lesson::State::missed_without_notice:
                ++counts.missed;
                break;
            case Lesson::State::cancelled:
                ++counts.cancelled;
                break;
            case Lesson::State::planned:
            case Lesson::State::moved:
                break;
        }
    }
    return counts;
}

int still_owed(const store::StudioFile& file, const std::vector<Lesson>& lessons) {
    const auto to_make_up = file.lessons_to_make_up();
    const auto owed = studio::make_ups_owed(to_make_up);
    return static_cast<int>(std::ranges::count_if(lessons, [&](const Lesson& lesson) {
        return std::ranges::any_of(owed,
                                   [&](const studio::OwedLesson& each) { return each.missed == lesson.id; });
    }));
}

std::vector<pages::TermSummary::Practised> practised_in(const Gathering& from, studio::StudentId student,
                                                        studio::Date first, studio::Date last) {
    std::vector<pages::TermSummary::Practised> all;
    const auto entries = from.file.practice(student, first, last);
    for (const auto& assignment : from.file.assignments(student)) {
        if (!studio::share_a_day(assignment.from, assignment.until, first, last + 1)) continue;
        const auto routine = from.file.routine(assignment.routine);
        const auto days = studio::practised(assignment, entries, student, first, last);
        const std::string title = routine ? routine->title : std::string();
        const auto same = std::ranges::find_if(all, [&](const auto& each) { return each.title == title; });
        if (same == all.end()) {
            all.push_back({title, days});
        } else {
            same->days.due += days.due;
            same->days.done += days.done;
        }
    }
    std::ranges::reverse(all);
    return all;
}

using Way = std::pair<int, std::string>;

/// The mean of each note's takes, by pitch and how it was played.
std::map<Way, units::Cents> means(const studio::TuningSheet& sheet, const horns::HornKind& kind) {
    std::map<Way, std::pair<units::Cents, int>> sums;
    for (const auto& reading : sheet.readings) {
        auto& sum = sums[{reading.note.midi(), words::fingering_figure(kind, reading.fingering)}];
        sum.first = sum.first + reading.cents;
        ++sum.second;
    }
    std::map<Way, units::Cents> means;
    for (const auto& [way, sum] : sums)
        means[way] = (1.0 / sum.second) * sum.first;
    return means;
}

pages::TermSummary::Sheet told(const studio::TuningSheet& sheet, const std::map<Way, units::Cents>& means,
                               units::Cents tolerance) {
    const auto within =
        std::ranges::count_if(means, [&](const auto& each) { return abs(each.second) <= tolerance; });
    return {sheet.on, static_cast<int>(sheet.readings.size()), static_cast<int>(means.size()),
            static_cast<int>(within)};
}

pages::TermSummary::Leans leans_of(const Gathering& from, const studio::Student& student,
                                   const studio::Horn& horn, const studio::TuningSheet& first,
                                   const studio::TuningSheet& last) {
    const auto kind = studio::kind_of(horn);
    const auto style = studio::note_style(from.facts, student, kind);
    const units::Cents tolerance = student.tolerance.value_or(tuning::figures().of(student.level).tolerance);
    const auto now = means(last, kind);
    const bool two = first.id != last.id;
    const auto then = two ? means(first, kind) : std::map<Way, units::Cents>();
    pages::TermSummary::Leans leans{
        .horn = horn.mark, .then = {}, .now = told(last, now, tolerance), .chart = {}};
    if (two) leans.then = told(first, then, tolerance);
    leans.chart.clef = style.reader.clef;
    leans.chart.tolerance = tolerance;
    std::map<Way, charts::LeanNote> notes;
    for (const auto& [way, cents] : then)
        notes[way].before = cents;
    for (const auto& [way, cents] : now)
        notes[way].after = cents;
    for (auto& [way, note] : notes) {
        note.spelling = horns::spelt(units::Pitch(way.first), style);
        note.fingering = way.second;
        leans.chart.notes.push_back(std::move(note));
    }
    return leans;
}

/// One for each horn with a sheet in these days.
std::vector<pages::TermSummary::Leans> leans_in(const Gathering& from, const studio::Student& student,
                                                studio::Date first, studio::Date last) {
    std::vector<pages::TermSummary::Leans> all;
    std::vector<studio::HornId> done;
    const auto sheets = from.file.sheets(student.id);
    const auto counts = [&](const studio::TuningSheet& sheet) {
        return first <= sheet.on && sheet.on <= last && !sheet.readings.empty();
    };
    for (const auto& newest : sheets) {
        if (!counts(newest) || std::ranges::find(done, newest.horn) != done.end()) continue;
        done.push_back(newest.horn);
        const auto* oldest = &newest;
        for (const auto& sheet : sheets)
            if (counts(sheet) && sheet.horn == newest.horn) oldest = &sheet;
        const auto horn = from.file.horn(newest.horn);
        if (horn) all.push_back(leans_of(from, student, *horn, *oldest, newest));
    }
    return all;
}

}  // namespace

pages::LessonNotes lesson_notes(const Gathering& from, const studio::Student& student, studio::Date first,
                                studio::Date last) {
    pages::LessonNotes notes{.facts = from.facts,
                             .student = student,
                             .first = first,
                             .last = last,
                             .lessons = {},
                             .style = from.style};
    auto lessons = from.file.lessons(student.id, first, last);
    std::ranges::reverse(lessons);
    for (auto& lesson : lessons) {
        if (lesson.state == Lesson::State::planned) continue;
        lesson.state = state_for(lesson, student.id);
        const auto group = lesson.group ? from.file.group(*lesson.group) : std::nullopt;
        notes.lessons.push_back({std::move(lesson), group ? group->name : std::string()});
    }
    return notes;
}

pages::TermSummary term_summary(const Gathering& from, const studio::Student& student,
                                const studio::Term& term, const std::string& remark) {
    const auto last = std::min(term.last, from.day);
    const auto lessons = from.file.lessons(student.id, term.first, last);
    pages::TermSummary summary{.facts = from.facts,
                               .date = from.day,
                               .student = student,
                               .term = term,
                               .lessons = counted(lessons, student.id),
                               .pieces = {},
                               .routines = practised_in(from, student.id, term.first, last),
                               .leans = leans_in(from, student, term.first, last),
                               .remark = remark,
                               .next = {},
                               .style = from.style};
    summary.lessons.to_make_up = still_owed(from.file, lessons);
    for (auto& piece : from.file.pieces(student.id))
        if (studio::share_a_day(piece.from, piece.until, term.first, last + 1))
            summary.pieces.push_back(std::move(piece));
    const auto newest = std::ranges::find_if(lessons, [](const Lesson& lesson) {
        return lesson.state == Lesson::State::kept && !lesson.next.empty();
    });
    if (newest != lessons.end()) summary.next = newest->next;
    return summary;
}

}  // namespace lowledger::paper
