#include "reports/pages/day_list.h"

#include <utility>

#include "reports/canvas/table.h"
#include "reports/pages/flow.h"
#include "reports/pages/listed.h"
#include "reports/words/book_words.h"
#include "reports/words/routine_words.h"

namespace lowledger::pages {
namespace {

using namespace units::literals;
using words::Sentence;

/// An empty box (U+25A1).
constexpr const char* box = "\u25A1";

std::string student_cell(const DayList& list, const studio::StudentAhead& ahead, const words::Words& words) {
    std::vector<std::string> marks;
    for (const auto id : ahead.horns) {
        const auto found = list.marks.find(id);
        if (found != list.marks.end()) marks.push_back(found->second);
    }
    if (listed(marks).empty()) return ahead.student.name;
    return words.say(Sentence::day_list_student_on, {{"name", ahead.student.name}, {"horns", listed(marks)}});
}

std::string for_today(const studio::StudentAhead& ahead, const words::Words& words) {
    std::string text = ahead.last ? ahead.last->next : std::string();
    const auto add = [&](Sentence sentence) { text += (text.empty() ? "" : "\n") + words.say(sentence); };
    if (ahead.settings_wait) add(Sentence::day_list_settings_wait);
    if (!ahead.last_sheet && !ahead.horns.empty()) add(Sentence::day_list_no_sheet);
    return text;
}

std::string practises(const studio::StudentAhead& ahead) {
    std::vector<std::string> titles;
    for (const auto& given : ahead.routines)
        titles.push_back(given.title);
    return listed(titles);
}

void add_rows(canvas::Table& table, const DayList& list, const studio::LessonAhead& ahead,
              const words::Words& words) {
    const auto& lesson = ahead.lesson;
    const std::string not_kept = words::lesson_not_kept(words, lesson.state);
    std::string when = lesson.starts.text() + (lesson.room.empty() ? "" : "\n" + lesson.room);
    const char* there = not_kept.empty() ? box : "";
    if (!ahead.group_name.empty()) {
        table.rows.push_back({when, ahead.group_name, not_kept});
        when.clear();
    }
    for (const auto& student : ahead.students)
        table.rows.push_back(
            {std::exchange(when, {}), student_cell(list, student, words),
             not_kept.empty() || !ahead.group_name.empty() ? for_today(student, words) : not_kept,
             practises(student), there});
}

}  // namespace

canvas::Document day_list(const DayList& list, const words::Words& words, const canvas::Faces& faces) {
    Flow flow(
        words.say(Sentence::day_list_title, {{"weekday", words::weekday_name(words, list.day.weekday())}}),
        list.style, words, faces);
    flow.head(list.facts, list.day,
              list.lessons.empty()
                  ? words.say(Sentence::day_list_none)
                  : words.say_counted(Sentence::day_list_how_one, Sentence::day_list_how_many,
                                      static_cast<int>(list.lessons.size())));
    if (list.lessons.empty()) return flow.finished(list.facts, list.day);
    canvas::Table table{.columns = {{words.say(Sentence::day_list_time)},
                                    {words.say(Sentence::day_list_who)},
                                    {words.say(Sentence::day_list_for_today), canvas::Align::left, 1.0},
                                    {words.say(Sentence::day_list_practises)},
                                    {words.say(Sentence::day_list_there), canvas::Align::centre}},
                        .rows = {},
                        .head = type::strong,
                        .body = type::body};
    for (const auto& lesson : list.lessons)
        add_rows(table, list, lesson, words);
    flow.table(table, 4_mm);
    return flow.finished(list.facts, list.day);
}

}  // namespace lowledger::pages
