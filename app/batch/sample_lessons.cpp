#include <algorithm>
#include <array>
#include <fmt/format.h>

#include "app/batch/sample_story.h"
#include "model/studio/calendar.h"

namespace lowledger::batch {

namespace {

using studio::Attendance;
using studio::Date;
using studio::Lesson;
using studio::TimeOfDay;

std::size_t one_of(SampleRandom& random, std::size_t count) {
    return static_cast<std::size_t>(random.uniform() * static_cast<double>(count));
}

/// Files the school year, term by term.
class SchoolYear {
  public:
    explicit SchoolYear(SampleStory& story) : story_(story), book_(story.sources.book) {}

    void tell() {
        for (const SampleTerm& term : book_.terms)
            file_term(term);
        for (const SampleGroup& group : book_.groups)
            file_group(group);
        for (const studio::Term& term : story_.terms) {
            const std::vector<studio::TimetableSlot> slots = timetable_of(term);
            for (const Lesson& lesson : studio::lessons_to_make(term, slots, {}))
                tell(term, lesson);
        }
    }

  private:
    void file_term(const SampleTerm& told) {
        const auto first = [&](const SampleSpan& span) {
            return story_.day(span.first_week, span.first_day);
        };
        const auto last = [&](const SampleSpan& span) { return story_.day(span.last_week, span.last_day); };
        studio::Term term{{}, told.span.name, first(told.span), last(told.span)};
        for (const SampleSpan& holiday : told.holidays)
            term.holidays.push_back({first(holiday), last(holiday), holiday.name});
        term.id = story_.edit.add(term);
        story_.terms.push_back(term);
    }

    void file_group(const SampleGroup& told) {
        studio::Group group{{}, told.name, told.remarks};
        for (const SampleMember& member : told.members) {
            studio::GroupMember filed{story_.students.at(member.name), member.from_week
                                                                           ? story_.day(*member.from_week, 1)
                                                                           : story_.terms.front().first};
            if (member.until_week) filed.until = story_.day(*member.until_week, 1);
            group.members.push_back(filed);
        }
        group.id = story_.edit.add(group);
        story_.groups[group.name] = group.id;
        groups_.push_back(group);
    }

    std::vector<studio::TimetableSlot> timetable_of(const studio::Term& term) {
        std::vector<studio::TimetableSlot> slots;
        const auto add = [&](studio::TimetableSlot slot, const SampleLesson& lesson) {
            slot.term = term.id;
            slot.starts = lesson.at;
            slot.length = lesson.length;
            slot.room = lesson.room;
            slot.every_weeks = lesson.every_weeks;
            slot.id = story_.edit.add(slot);
            slots.push_back(slot);
        };
        for (const SampleStudent& student : story_.sources.students) {
            if (!student.lesson || student.plays.empty()) continue;
            studio::TimetableSlot slot;
            slot.student = story_.students.at(student.record.name);
            slot.weekday = student.lesson_day + 1;
            const Date from = story_.day(student.plays.front().from_week, 1);
            if (from > term.first) slot.from = from;
            if (const auto until = student.plays.back().until_week)
                if (const Date end = story_.day(*until, 1); end <= term.last) slot.until = end;
            if (from > term.last || (slot.until && *slot.until <= term.first)) continue;
            add(slot, *student.lesson);
        }
        for (std::size_t i = 0; i < groups_.size(); ++i) {
            studio::TimetableSlot slot;
            slot.group = groups_[i].id;
            slot.weekday = book_.groups[i].weekday;
            add(slot, book_.groups[i].lesson);
        }
        return slots;
    }

    void tell(const studio::Term& term, Lesson lesson) {
        if (lesson.on < story_.as_of) {
            if (lesson.group)
                hold_group(lesson);
            else
                hold(lesson);
        }
        lesson.id = story_.edit.add(lesson);
        if (lesson.state == Lesson::State::moved)
            arrange(term, lesson, 1);
        else if (lesson.make_up_owed && story_.as_of - lesson.on > 21)
            arrange(term, lesson, 8);
    }

    /// How a student's lesson went.
    void hold(Lesson& lesson) {
        const SampleStudent& told = story_.told(*lesson.student);
        SampleRandom random = story_.random("lesson", told.record.name, lesson.on);
        const double drawn = random.uniform();
        const auto sheet = story_.measured.find({told.record.name, lesson.on});
        if (sheet != story_.measured.end() || drawn >= 0.12)
            lesson.state = Lesson::State::kept;
        else if (drawn < 0.05)
            lesson.state = Lesson::State::missed_with_notice;
        else if (drawn < 0.07)
            lesson.state = Lesson::State::missed_without_notice;
        else if (drawn < 0.09)
            lesson.state = Lesson::State::cancelled;
        else
            lesson.state = Lesson::State::moved;
        lesson.make_up_owed = studio::usually_made_up(lesson.state);
        if (lesson.state == Lesson::State::kept)
            note(lesson, told.record.name, book_.notes.of(told.record.level), random);
        else if (lesson.state != Lesson::State::cancelled && !book_.notes.reasons.empty())
            lesson.private_remark = book_.notes.reasons[one_of(random, book_.notes.reasons.size())];
        if (sheet == story_.measured.end()) return;
        lesson.done = (sheet->second == SampleSheet::Settings::moved ? "Tuning sheet, slides moved as told. "
                                                                     : "Tuning sheet. ") +
                      lesson.done;
    }

    void hold_group(Lesson& lesson) {
        const auto group = std::ranges::find(groups_, *lesson.group, &studio::Group::id);
        SampleRandom random = story_.random("lesson", group->name, lesson.on);
        if (random.uniform() < 0.04) {
            lesson.state = Lesson::State::cancelled;
            return;
        }
        lesson.state = Lesson::State::kept;
        note(lesson, group->name, book_.notes.group, random);
        for (const studio::StudentId member : studio::members_on(*group, lesson.on)) {
            const double drawn = random.uniform();
            lesson.attendance.push_back({member, drawn < 0.84   ? Attendance::State::present
                                                 : drawn < 0.90 ? Attendance::State::late
                                                 : drawn < 0.97 ? Attendance::State::missed_with_notice
                                                                : Attendance::State::missed_without_notice});
        }
    }

    /// The next of the round of notes: what was planned last time is what is done now.
    void note(Lesson& lesson, const std::string& who, const std::vector<SampleNote>& round,
              SampleRandom& random) {
        if (round.empty()) return;
        const auto first = [&] {
            SampleRandom start(story_.seed, "notes " + who);
            return one_of(start, round.size());
        };
        const auto [at, is_new] = next_note_.try_emplace(who, 0);
        if (is_new) at->second = first();
        const SampleNote& said = round[at->second++ % round.size()];
        lesson.done = said.done[one_of(random, said.done.size())];
        lesson.next = said.next;
        const std::vector<std::string>& remarks = book_.notes.private_remarks;
        if (!remarks.empty() && random.uniform() < 0.05)
            lesson.private_remark = remarks[one_of(random, remarks.size())];
    }

    /// A lesson in place of `missed` on the first free late hour, `after_days` or more after it.
    void arrange(const studio::Term& term, Lesson& missed, int after_days) {
        for (Date on = missed.on + after_days; on <= term.last; on = on + 1) {
            if (!studio::is_school_day(term, on) || on.weekday() > 5) continue;
            for (const TimeOfDay at : std::array{TimeOfDay(17, 0), TimeOfDay(17, 50)}) {
                if (!taken_.emplace(on, at).second) continue;
                Lesson unchanged = missed;
                Lesson later = studio::moved(unchanged, on, at);
                later.done.clear();
                later.next.clear();
                later.private_remark.clear();
                if (on < story_.as_of) {
                    const SampleStudent& told = story_.told(*later.student);
                    SampleRandom random = story_.random("arranged", told.record.name, on);
                    later.state = Lesson::State::kept;
                    note(later, told.record.name, book_.notes.of(told.record.level), random);
                }
                story_.edit.add(later);
                return;
            }
        }
    }

    SampleStory& story_;
    const SampleBook& book_;
    std::vector<studio::Group> groups_;
    /// Places in the rounds of notes, by student or group.
    std::map<std::string, std::size_t> next_note_;
    std::set<std::pair<Date, TimeOfDay>> taken_;
};

}  // namespace

void tell_lessons(SampleStory& story) {
    SchoolYear(story).tell();
}

}  // namespace lowledger::batch
