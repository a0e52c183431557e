#include "app/desk/day.h"

#include <algorithm>
#include <array>
#include <map>

#include "app/desk/last_time.h"
#include "app/desk/lessons.h"
#include "app/desk/slip.h"
#include "model/studio/calendar.h"
#include "model/studio/questions.h"
#include "reports/words/names.h"
#include "reports/words/routine_words.h"

namespace lowledger::desk {
namespace {

using studio::Date;
using studio::Lesson;
using studio::LessonAhead;
using words::Sentence;

std::string joined(const std::vector<std::string>& parts, const char* between) {
    std::string out;
    for (const auto& part : parts)
        if (!part.empty()) out += (out.empty() ? "" : between) + part;
    return out;
}

/// "Ada, Ben: sheet due; Cy: slides moved?", from names with what is said of each.
std::string by_sentence(const std::vector<std::pair<std::string, std::string>>& said) {
    std::vector<std::string> parts;
    std::vector<std::string> sentences;
    for (const auto& [name, sentence] : said) {
        const auto found = std::ranges::find(sentences, sentence);
        if (found == sentences.end()) {
            sentences.push_back(sentence);
            parts.push_back(name);
        } else {
            parts[static_cast<std::size_t>(found - sentences.begin())] += ", " + name;
        }
    }
    for (std::size_t i = 0; i < parts.size(); ++i)
        parts[i] += ": " + sentences[i];
    return joined(parts, "; ");
}

/// Makes the day's rows; holds what they are told with.
class DayTeller {
  public:
    DayTeller(const store::StudioFile& file, const words::Words& words, Date on, Date today)
        : file_(file), words_(words), on_(on), today_(today) {}

    Day day() {
        Day day{.on = on_, .lessons = {}, .due = due()};
        const auto ahead = file_.day(on_);
        for (const auto& one : ahead)
            day.lessons.push_back(told(one));
        tell_clashes(ahead, day);
        return day;
    }

  private:
    std::string mark(studio::HornId id) {
        auto [found, is_new] = marks_.try_emplace(id);
        if (is_new)
            if (const auto horn = file_.horn(id)) found->second = horn->mark;
        return found->second;
    }

    std::string sheet_of(const studio::StudentAhead& ahead) const {
        if (ahead.horns.empty()) return {};
        if (!ahead.last_sheet) return words_.say(Sentence::today_no_sheet_yet);
        if (ahead.settings_wait) return words_.say(Sentence::today_slides_to_check);
        if (!is_old(ahead)) return {};
        return words_.say(Sentence::today_sheet_due, {{"days", std::to_string(on_ - ahead.last_sheet->on)}});
    }

    bool is_old(const studio::StudentAhead& ahead) const {
        return ahead.last_sheet && on_ - ahead.last_sheet->on > sheet_is_old_after_days;
    }

    DayLesson told(const LessonAhead& ahead) {
        const auto& lesson = ahead.lesson;
        DayLesson told{.lesson = lesson,
                       .time = span_text(words_, lesson),
                       .who = ahead.group_name,
                       .room = lesson.room};
        std::vector<std::pair<std::string, std::string>> sheets;
        for (const auto& student : ahead.students) {
            std::vector<std::string> horns;
            for (const auto horn : student.horns)
                horns.push_back(mark(horn));
            if (lesson.student) {
                told.who = student.student.name;
                told.horn = joined(horns, ", ");
            }
            const auto sheet = sheet_of(student);
            if (!sheet.empty()) sheets.emplace_back(studio::called(student.student), sheet);
            told.students.push_back(student.student.id);
            for (auto& part :
                 brief_of(words_, student, joined(horns, ", "), is_old(student), lesson.group.has_value()))
                told.brief.push_back(std::move(part));
        }
        told.sheet = lesson.group ? by_sentence(sheets) : sheets.empty() ? std::string() : sheets[0].second;
        std::vector<std::string> states{state_text(words_, lesson.state)};
        if (lesson.group && !lesson.attendance.empty()) states.push_back(there(lesson));
        if (lesson.instead_of)
            if (const auto original = file_.lesson(*lesson.instead_of))
                states.push_back(words_.say(Sentence::today_stands_for,
                                            {{"date", words::date_text(words_, original->on)}}));
        told.state = joined(states, " · ");
        return told;
    }

    [[nodiscard]] std::string there(const Lesson& lesson) const {
        const auto count = std::ranges::count_if(lesson.attendance, [](const auto& attendance) {
            return attendance.state == studio::Attendance::State::present ||
                   attendance.state == studio::Attendance::State::late;
        });
        return words_.say(Sentence::today_there, {{"there", std::to_string(count)},
                                                  {"all", std::to_string(lesson.attendance.size())}});
    }

    void tell_clashes(const std::vector<LessonAhead>& ahead, Day& day) const {
        std::vector<Lesson> lessons;
        lessons.reserve(ahead.size());
        for (const auto& one : ahead)
            lessons.push_back(one.lesson);
        for (const auto& [one, other] : studio::clashes(lessons)) {
            for (const auto& [of, with] : {std::pair(one, other), std::pair(other, one)})
                day.lessons[of].state +=
                    " · " + words_.say(Sentence::today_clashes, {{"who", day.lessons[with].who}});
        }
    }

    std::string student_name(studio::StudentId id) const {
        const auto student = file_.student(id);
        return student ? student->name : std::string();
    }

    std::vector<DueItem> due() {
        std::vector<DueItem> items;
        const auto overdue = file_.overdue(today_);
        for (const auto& loan : overdue.loans)
            add(items, words_.say(Sentence::due_loan, {{"horn", mark(loan.horn)}}),
                student_name(loan.student), *loan.due, {.place = Place::horns, .horn = loan.horn});
        for (const auto& work : overdue.due_again)
            add(items, work_text(work), work_on(work), *work.next_due, opens(work));
        for (const auto& work : overdue.to_do)
            add(items, work_text(work), work_on(work), work.noted_on, opens(work));
        add_make_ups(items);
        std::ranges::stable_sort(items, {}, &DueItem::from);
        return items;
    }

    void add(std::vector<DueItem>& items, std::string what, std::string whose, Date from,
             const View& view) const {
        items.push_back({std::move(what), std::move(whose), words::date_text(words_, from), from, view});
    }

    void add_make_ups(std::vector<DueItem>& items) const {
        const auto lessons = file_.lessons_to_make_up();
        for (const auto& owed : studio::make_ups_owed(lessons)) {
            const auto& missed = *std::ranges::find(lessons, owed.missed, &Lesson::id);
            if (missed.on > today_) continue;
            std::string what = words_.say(Sentence::due_make_up);
            if (owed.arranged) {
                const auto& arranged = *std::ranges::find(lessons, *owed.arranged, &Lesson::id);
                what = words_.say(Sentence::due_make_up_arranged,
                                  {{"date", words::date_text(words_, arranged.on)}});
            }
            View view{.place = Place::today, .day = missed.on, .lesson = missed.id};
            if (missed.student)
                view = {.place = Place::students,
                        .student = missed.student,
                        .section = Section::lesson_note,
                        .lesson = missed.id};
            add(items, std::move(what), who_has(file_, missed), missed.on, view);
        }
    }

    std::string work_text(const studio::Upkeep& work) const {
        static constexpr std::array names{Sentence::due_work_checked,     Sentence::due_work_cleaned,
                                          Sentence::due_work_disinfected, Sentence::due_work_greased,
                                          Sentence::due_work_repaired,    Sentence::due_work_other};
        const auto name = words_.say(names.at(static_cast<std::size_t>(work.work)));
        return work.what.empty() ? name : name + ": " + work.what;
    }

    std::string work_on(const studio::Upkeep& work) {
        if (work.horn) return mark(*work.horn);
        const auto mouthpiece = work.mouthpiece ? file_.mouthpiece(*work.mouthpiece) : std::nullopt;
        return mouthpiece ? mouthpiece->mark : std::string();
    }

    [[nodiscard]] View opens(const studio::Upkeep& work) const {
        View view{.place = Place::horns, .horn = work.horn};
        if (!work.horn && work.mouthpiece)
            if (const auto mouthpiece = file_.mouthpiece(*work.mouthpiece)) view.horn = mouthpiece->horn;
        return view;
    }

    const store::StudioFile& file_;
    const words::Words& words_;
    Date on_;
    Date today_;
    std::map<studio::HornId, std::string> marks_;
};

}  // namespace

Day day_of(const store::StudioFile& file, const words::Words& words, Date on, Date today) {
    return DayTeller(file, words, on, today).day();
}

std::string day_title(const words::Words& words, Date on) {
    return words.say(Sentence::today_title, {{"weekday", words::weekday_name(words, on.weekday())},
                                             {"date", words::date_text(words, on)}});
}

Listing lessons_listing(const Day& day, const words::Words& words) {
    Listing listing;
    listing.columns = {{words.say(Sentence::column_time), false, true},
                       {words.say(Sentence::column_who)},
                       {words.say(Sentence::column_horn), false, true},
                       {words.say(Sentence::column_room), false, true},
                       {words.say(Sentence::column_lesson)},
                       {words.say(Sentence::column_sheet)}};
    for (const auto& one : day.lessons) {
        const bool over = !studio::takes_place(one.lesson);
        listing.rows.push_back({one.lesson.id.number,
                                {{one.time, static_cast<double>(one.lesson.starts.minutes())},
                                 one.who,
                                 one.horn,
                                 one.room,
                                 one.state,
                                 one.sheet},
                                over});
    }
    return listing;
}

Listing due_listing(const Day& day, const words::Words& words) {
    Listing listing;
    listing.columns = {{words.say(Sentence::column_since), false, true},
                       {words.say(Sentence::column_due)},
                       {words.say(Sentence::column_due_whose)}};
    for (std::size_t i = 0; i < day.due.size(); ++i) {
        const auto& item = day.due[i];
        listing.rows.push_back(
            {static_cast<std::int64_t>(i), {ListingCell(item.since, item.from), item.what, item.whose}});
    }
    return listing;
}

void open_lesson(Desk& desk, studio::LessonId id) {
    const auto lesson = desk.file().lesson(id);
    if (!lesson) return;
    View view{
        .place = Place::students, .student = lesson->student, .section = Section::last_time, .lesson = id};
    if (lesson->group) {
        const auto group = desk.file().group(*lesson->group);
        std::vector<SlipChoice> members;
        if (group)
            for (const auto member : studio::members_on(*group, lesson->on))
                if (const auto student = desk.file().student(member))
                    members.push_back({std::to_string(member.number), student->name});
        if (members.empty())
            throw units::Refusal(
                desk.words().say(Sentence::group_is_empty, {{"name", who_has(desk.file(), *lesson)}}));
        Slip slip(desk.words().say(Sentence::slip_open_group, {{"name", group->name}}),
                  desk.words().say(Sentence::verb_open));
        slip.choice("student", desk.words().say(Sentence::slip_student), members, members.front().key);
        const auto answers = desk.front().ask(slip);
        if (!answers) return;
        view.student = studio::StudentId{std::stoll(answers->chosen("student"))};
    }
    desk.go(view);
    desk.front().show_section();
}

}  // namespace lowledger::desk
