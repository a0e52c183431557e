#include "tests/reports/pages/sample_book_pages.h"

#include <algorithm>
#include <utility>

#include "model/horns/note_style.h"
#include "reports/pages/class_list.h"
#include "reports/pages/day_list.h"
#include "reports/pages/horn_card.h"
#include "reports/pages/inventory.h"
#include "reports/pages/lesson_notes.h"
#include "reports/pages/loan_form.h"
#include "reports/pages/repair_list.h"
#include "reports/pages/term_summary.h"

namespace lowledger::pages {
namespace {

using studio::Date;

const Date day(2026, 11, 25);
/// Sixty letters.
const std::string long_name = "Bartholomew Maximilian Featherstonehaugh-Quillinan of Quernstow";

studio::StudioFacts facts() {
    studio::StudioFacts facts;
    facts.name = "Harbour Street low brass";
    facts.teacher = "Nora Field";
    facts.school = "Harbour Street School";
    return facts;
}

std::string many_words(int count) {
    std::string text;
    for (int i = 0; i < count; ++i)
        text += (i == 0 ? "" : " ") + std::string(i % 7 == 0 ? "breathing," : "slowly");
    return text;
}

studio::Student student(int number, const std::string& name) {
    studio::Student student;
    student.id = {number};
    student.name = name;
    student.year = "Year 7";
    student.group = "Beginner tubas";
    student.remarks = private_text;
    student.at_home = studio::AtHome::mouthpiece_only;
    student.guardian = {"Ewa Holm", "555-0101", "ewa@example.org"};
    student.goals = "Play in the school concert without looking at the fingers.";
    return student;
}

studio::Horn horn(int number, const std::string& mark) {
    studio::Horn horn;
    horn.id = {number};
    horn.mark = mark;
    horn.serial_number = "HS 0117";
    horn.remarks = private_text;
    horn.inventory_tag = "IT-204";
    horn.case_text = "hard case, grey";
    horn.locker = "L 12";
    horn.accessories = "Valve oil, cloth";
    horn.condition = "Dent in the bottom bow, does no harm.";
    horn.value = studio::Money{125000, "EUR"};
    return horn;
}

std::string name_of(int number) {
    return number % 5 == 4 ? long_name : "Ida Holm the " + std::to_string(number + 1) + ".";
}

ClassList a_class(int count, const PageStyle& style) {
    ClassList list{facts(), day, count == 0 ? "" : "Beginner tubas", {}, style};
    for (int i = 0; i < count; ++i) {
        list.members.push_back({student(i + 1, name_of(i)), {horn(i + 1, "T-" + std::to_string(i))}});
        if (i % 4 == 1) list.members.back().student.called = "Ida";
        if (i % 4 == 2) list.members.back().horns.clear();
    }
    return list;
}

studio::Lesson lesson(int number, Date on, const std::string& done, const std::string& next) {
    studio::Lesson lesson{.id = {number}, .student = studio::StudentId{1}, .on = on};
    lesson.starts = studio::TimeOfDay::from_minutes(600 + number * 5 % 400);
    lesson.room = "Room 2";
    lesson.state = studio::Lesson::State::kept;
    lesson.done = done;
    lesson.next = next;
    lesson.private_remark = private_text;
    return lesson;
}

studio::LessonAhead lesson_ahead(int number, int students, int words) {
    studio::LessonAhead ahead{lesson(number, day, {}, {}), students > 1 ? "Low brass section" : "", {}};
    ahead.lesson.state = number % 6 == 5 ? studio::Lesson::State::cancelled : studio::Lesson::State::planned;
    for (int i = 0; i < students; ++i) {
        studio::StudentAhead one{student(i + 1, name_of(i)), {studio::HornId{1}}, {}, {}, {}, i % 2 == 0};
        one.last = lesson(90, day - 7, "Long tones.", many_words(words));
        one.routines.push_back({{.id = {}, .routine = {}, .from = day, .remarks = "Softly"},
                                "Long tones going down",
                                "three times"});
        ahead.students.push_back(std::move(one));
    }
    return ahead;
}

DayList a_day(int lessons, int words, const PageStyle& style) {
    DayList list{facts(), day, {}, {{studio::HornId{1}, "T-4"}}, style};
    for (int i = 0; i < lessons; ++i)
        list.lessons.push_back(lesson_ahead(i, i % 3 == 1 ? 4 : 1, words));
    return list;
}

Inventory an_inventory(int count, const PageStyle& style) {
    Inventory list{facts(), day, {}, {}, style};
    for (int i = 0; i < count; ++i) {
        const bool own = i % 6 == 5;
        list.horns.push_back({horn(i + 1, own ? "own (" + name_of(i) + ")" : "T-" + std::to_string(i)),
                              "BB\u266D tuba, four valves",
                              own ? name_of(i) : "",
                              {{name_of(i), i % 2 == 0}}});
        if (i % 3 == 0) list.horns.back().horn.condition = many_words(30);
        if (i % 4 == 1) list.horns.back().horn.value = studio::Money{9900, "$"};
        studio::Mouthpiece mouthpiece;
        mouthpiece.mark = "M-" + std::to_string(i);
        mouthpiece.size = "tuba, medium deep cup";
        mouthpiece.kept_in = "Drawer 1";
        mouthpiece.remarks = private_text;
        if (i % 5 == 0) list.mouthpieces.push_back({mouthpiece, "T-0", "", i == 0 ? name_of(4) : ""});
    }
    return list;
}

studio::Upkeep work(studio::Upkeep::Work kind, const std::string& what) {
    studio::Upkeep work{.id = {}, .horn = studio::HornId{1}, .work = kind, .noted_on = day - 30};
    work.what = what;
    work.by = "Repair technician";
    return work;
}

RepairList repairs(int count, const PageStyle& style) {
    RepairList list{facts(), day, {}, style};
    for (int i = 0; i < count; ++i) {
        RepairList::Item item{
            "T-" + std::to_string(i), "BB\u266D tuba, four valves", "HS 0117", "L 12", name_of(i), {}, {}};
        item.works.push_back(work(studio::Upkeep::Work::repaired, many_words(i % 4 == 3 ? 60 : 8)));
        if (i % 3 == 0) item.stuck_slides = {"third valve slide", "main slide"};
        if (i % 3 == 1) {
            item.works.push_back(work(studio::Upkeep::Work::greased, "All slides."));
            item.works.back().done_on = day - 90;
            item.works.back().next_due = day - 2;
        }
        list.items.push_back(std::move(item));
    }
    return list;
}

LessonNotes notes(int lessons, int words, const PageStyle& style) {
    LessonNotes notes{facts(), student(1, name_of(lessons == 8 ? 4 : 0)), day - 90, day, {}, style};
    for (int i = 0; i < lessons; ++i) {
        notes.lessons.push_back(
            {lesson(i, day - 90 + i, many_words(words), "Slur to the neighbour and back."),
             i % 3 == 1 ? "Low brass section" : ""});
        if (i % 4 != 3) continue;
        auto& one = notes.lessons.back().lesson;
        one.state = studio::Lesson::State::missed_with_notice;
        one.done.clear();
        one.next.clear();
    }
    return notes;
}

studio::Loan loan(const std::string& condition) {
    return {.id = {},
            .horn = studio::HornId{1},
            .student = studio::StudentId{1},
            .from = day - 10,
            .due = day + 90,
            .condition_out = condition,
            .remarks = private_text};
}

LoanForm form(int rows, const PageStyle& style) {
    LoanForm form{.facts = facts(),
                  .date = day,
                  .student = student(1, name_of(rows == 70 ? 4 : 0)),
                  .horn = horn(1, "S-2"),
                  .kind_name = "BB\u266D sousaphone, three valves",
                  .cautions = {"caution_lift_sousaphone", "caution_march"},
                  .style = style};
    if (rows > 0) {
        form.loan = loan(rows == 70 ? many_words(2000) : "Small dent in the bell.");
        form.mouthpiece = "M-2, tuba, shallow cup";
        return form;
    }
    form.horn = studio::Horn{};
    form.horn.mark = "S-2";
    form.cautions.clear();
    return form;
}

HornCard card(int works, const PageStyle& style) {
    HornCard card{.facts = facts(),
                  .date = day,
                  .horn = horn(1, works == 70 ? "own (" + long_name + ")" : "T-4"),
                  .kind_name = "BB\u266D tuba, four valves",
                  .owner = works == 70 ? long_name : "",
                  .holders = {},
                  .slides = {},
                  .upkeep = {},
                  .cautions = {"caution_lift_tuba"},
                  .style = style};
    if (works == 0) card.horn = studio::Horn{};
    for (const char* name : {"main slide", "first valve slide", "second valve slide", "third valve slide"})
        if (works > 0)
            card.slides.push_back({name,
                                   {name, units::Millimetres(3.0), units::Millimetres(70.0), *name == 't'},
                                   *name == 'm' ? std::nullopt : std::optional(units::Millimetres(12.0))});
    for (int i = 0; i < works; ++i) {
        card.holders.push_back(i < 3 ? name_of(i) : std::string());
        card.upkeep.push_back(work(studio::Upkeep::Work::checked, many_words(i % 9 == 8 ? 80 : 6)));
        if (i % 2 == 0) card.upkeep.back().done_on = day - 300 + i;
        card.upkeep.back().cost = studio::Money{4500, "EUR"};
    }
    return card;
}

charts::LeanChart chart(int notes) {
    charts::LeanChart chart;
    for (int i = 0; i < notes; ++i) {
        charts::LeanNote note;
        note.spelling = horns::spelt(units::Pitch(34 + i), {});
        note.fingering = i % 3 == 0 ? "0" : "13";
        if (i % 4 != 1) note.before = units::Cents(-20.0 + 3.0 * i);
        note.after = units::Cents(12.0 - 2.0 * i);
        chart.notes.push_back(note);
    }
    return chart;
}

TermSummary summary(int rows, const PageStyle& style) {
    TermSummary summary{.facts = facts(),
                        .date = day,
                        .student = student(1, name_of(rows == 70 ? 4 : 0)),
                        .term = {{}, "Autumn term", day - 90, day + 20},
                        .lessons = {},
                        .pieces = {},
                        .routines = {},
                        .leans = {},
                        .style = style};
    if (rows == 0) {
        summary.student.goals.clear();
        return summary;
    }
    summary.lessons = {11, 1, 2, 1};
    for (int i = 0; i < rows; ++i) {
        summary.routines.push_back({i % 9 == 8 ? long_name : "Long tones going down", {20, i % 5}});
        if (i % 3 == 0)
            summary.pieces.push_back({.id = {},
                                      .student = {},
                                      .title = "Little Harbour March",
                                      .part = "2nd tuba",
                                      .from = day,
                                      .remarks = private_text});
    }
    summary.leans.push_back({"T-4", TermSummary::Sheet{day - 80, 14, 7, 3}, {day - 5, 14, 7, 6}, chart(7)});
    if (rows == 70) {
        summary.leans.push_back({"own (" + long_name + ")", {}, {day - 9, 40, 30, 1}, chart(30)});
        summary.remark = many_words(2000);
        summary.next = many_words(200);
    }
    return summary;
}

}  // namespace

std::vector<NamedDocument> book_pages(const PageStyle& style, const canvas::Faces& faces) {
    const words::Words words;
    std::vector<NamedDocument> all;
    const auto add = [&](const std::string& name, canvas::Document document) {
        all.push_back({name, std::move(document)});
    };
    for (const int count : {0, 5, 70}) {
        const std::string many = count == 0 ? "-none" : count == 5 ? "" : "-many";
        add("class-list" + many, class_list(a_class(count, style), words, faces));
        add("day-list" + many, day_list(a_day(count, count == 5 ? 12 : 60, style), words, faces));
        add("inventory" + many, inventory(an_inventory(count, style), words, faces));
        add("repair-list" + many, repair_list(repairs(count, style), words, faces));
        add("lesson-notes" + many,
            lesson_notes(notes(std::min(count, 8), count == 70 ? 2000 : 20, style), words, faces));
        add("loan-form" + many, loan_form(form(count, style), words, faces));
        add("horn-card" + many, horn_card(card(count, style), words, faces));
        add("term-summary" + many, term_summary(summary(count, style), words, faces));
    }
    return all;
}

}  // namespace lowledger::pages
