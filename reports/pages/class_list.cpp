#include "reports/pages/class_list.h"

#include "reports/canvas/table.h"
#include "reports/pages/flow.h"
#include "reports/pages/listed.h"
#include "reports/words/book_words.h"

namespace lowledger::pages {
namespace {

using namespace units::literals;
using words::Sentence;

std::string name_cell(const studio::Student& student, const words::Words& words) {
    if (student.called.empty()) return student.name;
    return words.say(Sentence::class_list_name_called, {{"name", student.name}, {"called", student.called}});
}

std::vector<std::string> row_of(const ClassList::Member& member, const words::Words& words) {
    const auto& student = member.student;
    std::vector<std::string> marks;
    std::vector<std::string> lockers;
    for (const auto& horn : member.horns) {
        marks.push_back(horn.mark);
        lockers.push_back(horn.locker);
    }
    return {name_cell(student, words),
            listed({student.year, student.group}),
            listed(marks),
            listed(lockers),
            words::at_home_text(words, student.at_home),
            listed({student.guardian.name, student.guardian.phone, student.guardian.e_mail})};
}

}  // namespace

canvas::Document class_list(const ClassList& list, const words::Words& words, const canvas::Faces& faces) {
    Flow flow(list.group.empty() ? words.say(Sentence::class_list_title)
                                 : words.say(Sentence::class_list_of, {{"group", list.group}}),
              list.style, words, faces);
    if (list.members.empty()) {
        flow.head(list.facts, list.date, words.say(Sentence::class_list_none));
        return flow.finished(list.facts, list.date);
    }
    flow.head(list.facts, list.date,
              words.say_counted(Sentence::class_list_how_one, Sentence::class_list_how_many,
                                static_cast<int>(list.members.size())));
    canvas::Table table{.columns = {{words.say(Sentence::class_list_name)},
                                    {words.say(Sentence::class_list_year)},
                                    {words.say(Sentence::class_list_horn)},
                                    {words.say(Sentence::class_list_locker)},
                                    {words.say(Sentence::class_list_at_home)},
                                    {words.say(Sentence::class_list_call), canvas::Align::left, 1.0}},
                        .rows = {},
                        .head = type::strong,
                        .body = type::body};
    for (const auto& member : list.members)
        table.rows.push_back(row_of(member, words));
    flow.table(table, 4_mm);
    return flow.finished(list.facts, list.date);
}

}  // namespace lowledger::pages
