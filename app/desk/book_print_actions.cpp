#include <algorithm>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/whom.h"
#include "app/paper/lists.h"
#include "app/paper/of_horns.h"
#include "app/paper/of_students.h"
#include "model/studio/calendar.h"
#include "model/units/refusal.h"
#include "reports/pages/handout.h"
#include "reports/pages/named.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

bool has_studio(const Desk& desk) {
    return desk.has_studio();
}

Slip slip_for(const Desk& desk, Sentence title) {
    return {desk.words().say(title), desk.words().say(Sentence::print_show)};
}

/// The slip filled in, after it was asked about large print too.
std::optional<SlipAnswers> asked(Desk& desk, Slip slip) {
    slip.check("large", desk.words().say(Sentence::print_large), false);
    return desk.front().ask(slip);
}

paper::Gathering gathering(const Desk& desk, const SlipAnswers& answers) {
    const auto facts = desk.file().facts();
    return {.file = desk.file(),
            .facts = facts,
            .day = desk.today(),
            .style = {.paper = pages::paper_of(facts), .large_print = answers.checked("large")}};
}

void show(Desk& desk, canvas::Document document, Sentence title, studio::Date day) {
    desk.front().show_document(std::move(document), desk.words().say(title) + " " + day.iso(), [] {});
}

void print_class(Desk& desk) {
    Slip slip = slip_for(desk, Sentence::class_list_title);
    ask_whom(slip, desk, false, Sentence::print_for_everybody);
    const auto answers = asked(desk, std::move(slip));
    if (!answers) return;
    const auto list = paper::class_list(gathering(desk, *answers), students_chosen(desk, *answers),
                                        group_chosen(desk, *answers));
    show(desk, pages::class_list(list, desk.words(), desk.front().faces()), Sentence::class_list_title,
         desk.today());
}

void print_day(Desk& desk) {
    Slip slip = slip_for(desk, Sentence::day_list_of_a_day);
    slip.date("day", desk.words().say(Sentence::print_day), desk.today());
    const auto answers = asked(desk, std::move(slip));
    if (!answers) return;
    auto from = gathering(desk, *answers);
    from.day = answers->date("day");
    show(desk, pages::day_list(paper::day_list(from), desk.words(), desk.front().faces()),
         Sentence::day_list_of_a_day, from.day);
}

void print_inventory(Desk& desk) {
    const auto answers = asked(desk, slip_for(desk, Sentence::inventory_title));
    if (!answers) return;
    show(desk,
         pages::inventory(paper::inventory(gathering(desk, *answers)), desk.words(), desk.front().faces()),
         Sentence::inventory_title, desk.today());
}

void print_repairs(Desk& desk) {
    const auto answers = asked(desk, slip_for(desk, Sentence::repairs_title));
    if (!answers) return;
    show(
        desk,
        pages::repair_list(paper::repair_list(gathering(desk, *answers)), desk.words(), desk.front().faces()),
        Sentence::repairs_title, desk.today());
}

using Documents = std::vector<pages::NamedDocument>;

void show_each(Desk& desk, const Documents& documents, Sentence title) {
    show(desk, pages::as_one(documents, desk.words().say(title)), title, desk.today());
}

/// The students chosen, asked whether there are any.
std::vector<studio::Student> some_students(const Desk& desk, const SlipAnswers& answers) {
    auto students = students_chosen(desk, answers);
    if (students.empty()) throw units::Refusal(desk.words().say(Sentence::print_nobody));
    return students;
}

/// A document for each student, as far as the work was not stopped.
std::optional<Documents> for_each(Desk& desk, const std::vector<studio::Student>& students,
                                  const std::function<void(Documents&, const studio::Student&)>& add) {
    std::vector<std::string> names;
    names.reserve(students.size());
    for (const auto& student : students)
        names.push_back(student.name);
    Documents documents;
    const bool all = desk.front().work_through(names, [&](std::size_t i) { add(documents, students[i]); });
    if (!all) return std::nullopt;
    return documents;
}

std::vector<studio::Term> terms_of(const Desk& desk) {
    auto terms = desk.file().terms();
    if (terms.empty()) throw units::Refusal(desk.words().say(Sentence::print_no_term));
    return terms;
}

/// The term of today, else the last that has begun, else the first.
studio::Term usual_term(const Desk& desk, const std::vector<studio::Term>& terms) {
    auto usual = terms.front();
    for (const auto& term : terms)
        if (term.first <= desk.today()) usual = term;
    return usual;
}

std::string key_of_term(const studio::Term& term) {
    return std::to_string(term.id.number);
}

void print_summaries(Desk& desk) {
    const auto& words = desk.words();
    const auto terms = terms_of(desk);
    std::vector<SlipChoice> choices;
    choices.reserve(terms.size());
    for (const auto& term : terms)
        choices.push_back({key_of_term(term), term.name});
    Slip slip = slip_for(desk, Sentence::print_summaries);
    ask_whom(slip, desk, true, Sentence::print_for_everybody);
    slip.choice("term", words.say(Sentence::print_term), choices, key_of_term(usual_term(desk, terms)));
    slip.lines("remark", words.say(Sentence::print_remark), {});
    const auto answers = asked(desk, std::move(slip));
    if (!answers) return;
    const auto term = std::ranges::find(terms, answers->chosen("term"), key_of_term);
    const auto from = gathering(desk, *answers);
    const auto documents =
        for_each(desk, some_students(desk, *answers), [&](Documents& all, const studio::Student& student) {
            const auto summary = paper::term_summary(from, student, *term, answers->text("remark"));
            all.push_back({student.name + ", " + term->name,
                           pages::term_summary(summary, words, desk.front().faces())});
        });
    if (documents) show_each(desk, *documents, Sentence::print_summaries);
}

void print_notes(Desk& desk) {
    const auto& words = desk.words();
    const auto terms = desk.file().terms();
    Slip slip = slip_for(desk, Sentence::notes_title);
    ask_whom(slip, desk, true, Sentence::print_for_everybody);
    slip.date("first", words.say(Sentence::print_first_day),
              terms.empty() ? desk.today() - 90 : usual_term(desk, terms).first);
    slip.date("last", words.say(Sentence::print_last_day), desk.today());
    slip.must([&words](const SlipAnswers& answers) -> std::optional<SlipProblem> {
        if (answers.date("first") <= answers.date("last")) return std::nullopt;
        return SlipProblem{"last", words.say(Sentence::print_days_turned)};
    });
    const auto answers = asked(desk, std::move(slip));
    if (!answers) return;
    const auto from = gathering(desk, *answers);
    const auto documents =
        for_each(desk, some_students(desk, *answers), [&](Documents& all, const studio::Student& student) {
            const auto notes =
                paper::lesson_notes(from, student, answers->date("first"), answers->date("last"));
            all.push_back({student.name, pages::lesson_notes(notes, words, desk.front().faces())});
        });
    if (documents) show_each(desk, *documents, Sentence::notes_title);
}

void print_loans(Desk& desk) {
    Slip slip = slip_for(desk, Sentence::print_loans);
    ask_whom(slip, desk, true);
    const auto answers = asked(desk, std::move(slip));
    if (!answers) return;
    const auto from = gathering(desk, *answers);
    Documents documents;
    for (const auto& student : some_students(desk, *answers))
        for (const auto& form : paper::loan_forms(from, student))
            documents.push_back({student.name + ", " + form.horn.mark,
                                 pages::loan_form(form, desk.words(), desk.front().faces())});
    if (documents.empty()) throw units::Refusal(desk.words().say(Sentence::print_nothing_to_lend));
    show_each(desk, documents, Sentence::print_loans);
}

void print_cards(Desk& desk) {
    const auto& words = desk.words();
    auto horns = desk.file().horns();
    std::erase_if(horns, [](const studio::Horn& horn) { return horn.archived; });
    if (horns.empty()) throw units::Refusal(words.say(Sentence::inventory_none));
    std::vector<SlipChoice> choices;
    std::vector<std::string> start;
    for (const auto& horn : horns) {
        choices.push_back({std::to_string(horn.id.number), horn.mark});
        if (!desk.horn() || desk.horn()->id == horn.id) start.push_back(choices.back().key);
    }
    Slip slip = slip_for(desk, Sentence::print_cards);
    slip.several("horns", words.say(Sentence::print_horns), choices, start);
    slip.must([&words](const SlipAnswers& answers) -> std::optional<SlipProblem> {
        if (!answers.several("horns").empty()) return std::nullopt;
        return SlipProblem{"horns", words.say(Sentence::print_no_horn_ticked)};
    });
    const auto answers = asked(desk, std::move(slip));
    if (!answers) return;
    const auto from = gathering(desk, *answers);
    const auto ticked = answers->several("horns");
    Documents documents;
    for (const auto& horn : horns)
        if (std::ranges::find(ticked, std::to_string(horn.id.number)) != ticked.end())
            documents.push_back(
                {horn.mark, pages::horn_card(paper::horn_card(from, horn), words, desk.front().faces())});
    show_each(desk, documents, Sentence::print_cards);
}

}  // namespace

std::vector<Action> book_print_actions() {
    return {
        {.id = "print.day",
         .menu = Menu::print,
         .text = "Lessons of a &day…",
         .starts_group = true,
         .may_run = has_studio,
         .run = print_day},
        {.id = "print.class",
         .menu = Menu::print,
         .text = "Cl&ass list…",
         .may_run = has_studio,
         .run = print_class},
        {.id = "print.notes",
         .menu = Menu::print,
         .text = "Lesson &notes…",
         .may_run = has_studio,
         .run = print_notes},
        {.id = "print.summaries",
         .menu = Menu::print,
         .text = "Term su&mmaries…",
         .may_run = has_studio,
         .run = print_summaries},
        {.id = "print.loans",
         .menu = Menu::print,
         .text = "&Loan forms…",
         .starts_group = true,
         .may_run = has_studio,
         .run = print_loans},
        {.id = "print.cards",
         .menu = Menu::print,
         .text = "H&orns' cards…",
         .may_run = has_studio,
         .run = print_cards},
        {.id = "print.inventory",
         .menu = Menu::print,
         .text = "In&ventory…",
         .may_run = has_studio,
         .run = print_inventory},
        {.id = "print.repairs",
         .menu = Menu::print,
         .text = "&Repair list…",
         .may_run = has_studio,
         .run = print_repairs},
    };
}

}  // namespace lowledger::desk
