#include "app/desk/last_time.h"

#include <algorithm>

#include "app/desk/lessons.h"
#include "model/studio/due.h"
#include "model/studio/questions.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using studio::Date;
using studio::Lesson;
using words::Sentence;

/// Long enough that no record of a studio lies before.
const Date earliest(1900, 1, 1);

std::vector<std::string> notes_of(const words::Words& words, const Lesson& lesson) {
    std::vector<std::string> lines;
    if (!lesson.done.empty()) lines.push_back(words.say(Sentence::last_done, {{"done", lesson.done}}));
    if (!lesson.next.empty()) lines.push_back(words.say(Sentence::last_next, {{"next", lesson.next}}));
    if (lines.empty()) lines.push_back(words.say(Sentence::last_nothing_noted));
    return lines;
}

std::string routine_line(const words::Words& words, const studio::GivenRoutine& given) {
    const auto& amount = given.assignment.amount.empty() ? given.dose : given.assignment.amount;
    if (amount.empty()) return given.title;
    return words.say(Sentence::last_routine, {{"title", given.title}, {"amount", amount}});
}

/// The last lesson that was kept before that one, or before tomorrow.
std::optional<Lesson> kept_before(const Desk& desk, studio::StudentId student) {
    const auto& now = desk.lesson();
    const Date last = now ? now->on : desk.today();
    for (const auto& lesson : desk.file().lessons(student, earliest, last)) {
        const bool before = !now || std::pair(lesson.on, lesson.starts) < std::pair(now->on, now->starts);
        if (lesson.state == Lesson::State::kept && before) return lesson;
    }
    return std::nullopt;
}

BriefPart lesson_part(const Desk& desk, studio::StudentId student) {
    const auto& words = desk.words();
    const auto lesson = kept_before(desk, student);
    if (!lesson)
        return {words.say(Sentence::last_lesson_none_heading), {words.say(Sentence::last_lesson_none)}};
    BriefPart part{words.say(Sentence::last_lesson, {{"date", day_title(words, lesson->on)}}),
                   notes_of(words, *lesson)};
    if (lesson->group)
        part.lines.push_back(words.say(Sentence::last_with_group, {{"name", who_has(desk.file(), *lesson)}}));
    return part;
}

BriefPart routines_part(const Desk& desk, studio::StudentId student) {
    const auto& words = desk.words();
    const Date today = desk.today();
    BriefPart part{words.say(Sentence::last_routines), {}};
    for (const auto& given : desk.file().assignments(student)) {
        if (!studio::holds_on(given, today)) continue;
        const auto routine = desk.file().routine(given.routine);
        if (!routine) continue;
        std::string line = routine_line(words, {given, routine->title, routine->dose});
        const auto count = studio::practised(given, desk.file().practice(student, given.from, today), student,
                                             given.from, today);
        if (count.done > 0)
            line = words.say(Sentence::last_practised, {{"routine", line},
                                                        {"done", std::to_string(count.done)},
                                                        {"due", std::to_string(count.due)}});
        part.lines.push_back(std::move(line));
    }
    if (part.lines.empty()) part.lines.push_back(words.say(Sentence::last_no_routines));
    return part;
}

std::string horn_mark(const Desk& desk, studio::HornId id) {
    const auto horn = desk.file().horn(id);
    return horn ? horn->mark : std::string();
}

BriefPart horn_part(const Desk& desk, studio::StudentId student) {
    const auto& words = desk.words();
    BriefPart part{words.say(Sentence::last_horn), {}};
    const auto given = desk.file().given_settings(student);
    if (!given.empty()) {
        const auto& last = given.front();
        const auto date = words::date_text(words, last.on);
        const auto horn = horn_mark(desk, last.horn);
        part.lines.push_back(
            last.moved_on
                ? words.say(
                      Sentence::last_settings_moved,
                      {{"date", date}, {"horn", horn}, {"moved", words::date_text(words, *last.moved_on)}})
                : words.say(Sentence::last_settings_wait, {{"date", date}, {"horn", horn}}));
    }
    const auto sheets = desk.file().sheets(student);
    if (sheets.empty()) {
        part.lines.push_back(words.say(Sentence::last_no_sheet));
        return part;
    }
    const auto& sheet = sheets.front();
    part.lines.push_back(words.say_counted(
        Sentence::last_sheet_one, Sentence::last_sheet_many, static_cast<int>(sheet.readings.size()),
        {{"date", words::date_text(words, sheet.on)}, {"horn", horn_mark(desk, sheet.horn)}}));
    return part;
}

BriefPart pieces_part(const Desk& desk, studio::StudentId student) {
    BriefPart part{desk.words().say(Sentence::last_pieces), {}};
    for (const auto& piece : desk.file().pieces(student))
        if (studio::holds_on(piece.from, piece.until, desk.today()))
            part.lines.push_back(piece.composer.empty() ? piece.title : piece.title + " · " + piece.composer);
    return part;
}

}  // namespace

std::vector<BriefPart> brief_of(const words::Words& words, const studio::StudentAhead& ahead,
                                const std::string& horns, bool sheet_due, bool with_name) {
    std::vector<BriefPart> parts;
    std::string heading = ahead.last
                              ? words.say(Sentence::last_lesson, {{"date", day_title(words, ahead.last->on)}})
                              : words.say(Sentence::last_lesson_none_heading);
    if (with_name) heading = ahead.student.name + (horns.empty() ? "" : " · " + horns);
    BriefPart lesson{std::move(heading), {}};
    lesson.lines = ahead.last ? notes_of(words, *ahead.last)
                              : std::vector<std::string>{words.say(Sentence::last_lesson_none)};
    if (with_name && ahead.last)
        lesson.lines.insert(lesson.lines.begin(),
                            words.say(Sentence::last_lesson, {{"date", day_title(words, ahead.last->on)}}));
    parts.push_back(std::move(lesson));
    BriefPart work{words.say(Sentence::last_routines), {}};
    for (const auto& given : ahead.routines)
        work.lines.push_back(routine_line(words, given));
    if (!work.lines.empty()) parts.push_back(std::move(work));
    BriefPart horn{words.say(Sentence::last_horn), {}};
    if (ahead.horns.empty()) return parts;
    if (ahead.settings_wait) horn.lines.push_back(words.say(Sentence::last_ask_slides));
    if (!ahead.last_sheet)
        horn.lines.push_back(words.say(Sentence::last_no_sheet));
    else
        horn.lines.push_back(words.say(sheet_due ? Sentence::last_sheet_old : Sentence::last_sheet_on,
                                       {{"date", words::date_text(words, ahead.last_sheet->on)}}));
    parts.push_back(std::move(horn));
    return parts;
}

std::vector<BriefPart> last_time(const Desk& desk) {
    if (!desk.student()) return {};
    const auto student = desk.student()->id;
    std::vector<BriefPart> parts{lesson_part(desk, student), routines_part(desk, student),
                                 horn_part(desk, student)};
    if (auto pieces = pieces_part(desk, student); !pieces.lines.empty()) parts.push_back(std::move(pieces));
    if (!desk.student()->goals.empty())
        parts.push_back({desk.words().say(Sentence::last_goals), {desk.student()->goals}});
    return parts;
}

}  // namespace lowledger::desk
