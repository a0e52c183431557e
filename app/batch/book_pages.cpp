#include "app/batch/book_pages.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>

#include "app/batch/choose.h"
#include "app/paper/lists.h"
#include "app/paper/of_horns.h"
#include "app/paper/of_students.h"
#include "model/studio/calendar.h"
#include "model/units/refusal.h"

namespace lowledger::batch {
namespace {

using Documents = std::vector<pages::NamedDocument>;

std::vector<studio::Student> students_of(const BookPrinting& printing) {
    return students_asked(printing.from.file, printing.request, printing.from.day);
}

Documents class_list(const BookPrinting& printing) {
    const auto list = paper::class_list(printing.from, students_of(printing), printing.request.group);
    return {{"Class list", pages::class_list(list, printing.words, printing.faces)}};
}

Documents day_list(const BookPrinting& printing) {
    return {{"Lessons of a day",
             pages::day_list(paper::day_list(printing.from), printing.words, printing.faces)}};
}

Documents inventory(const BookPrinting& printing) {
    return {{"Inventory", pages::inventory(paper::inventory(printing.from), printing.words, printing.faces)}};
}

Documents repair_list(const BookPrinting& printing) {
    return {{"Repair list",
             pages::repair_list(paper::repair_list(printing.from), printing.words, printing.faces)}};
}

studio::Term term_asked(const BookPrinting& printing) {
    const auto terms = printing.from.file.terms();
    const std::string& name = printing.asked.term;
    if (name.empty()) {
        if (const auto term = studio::term_on(terms, printing.from.day)) return *term;
        throw units::Refusal(
            fmt::format("There is no term on {}. Name one with --term NAME, or another day with --on.",
                        printing.from.day.iso()));
    }
    const auto found = std::ranges::find(terms, name, &studio::Term::name);
    if (found != terms.end()) return *found;
    std::vector<std::string> names;
    names.reserve(terms.size());
    for (const auto& term : terms)
        names.push_back(term.name);
    throw units::Refusal(
        fmt::format("--term {}: there is no such term. There are: {}.", name, fmt::join(names, "; ")));
}

studio::Date day_asked(const std::string& option, const std::string& text) {
    if (const auto date = studio::Date::parse_iso(text)) return *date;
    throw units::Refusal(fmt::format("{} {}: that is no date. Write it as 2026-11-25.", option, text));
}

Documents summaries(const BookPrinting& printing) {
    const auto term = term_asked(printing);
    Documents all;
    for (const auto& student : students_of(printing))
        all.push_back(
            {fmt::format("{}, {}", student.name, term.name),
             pages::term_summary(paper::term_summary(printing.from, student, term, printing.asked.remark),
                                 printing.words, printing.faces)});
    return all;
}

Documents notes(const BookPrinting& printing) {
    const auto first =
        printing.asked.first.empty() ? term_asked(printing).first : day_asked("--from", printing.asked.first);
    const auto last =
        printing.asked.last.empty() ? printing.from.day : day_asked("--until", printing.asked.last);
    if (last < first)
        throw units::Refusal(
            fmt::format("The notes would end ({}) before they begin ({}).", last.iso(), first.iso()));
    Documents all;
    for (const auto& student : students_of(printing))
        all.push_back({fmt::format("{}, lesson notes", student.name),
                       pages::lesson_notes(paper::lesson_notes(printing.from, student, first, last),
                                           printing.words, printing.faces)});
    return all;
}

Documents loans(const BookPrinting& printing) {
    Documents all;
    for (const auto& student : students_of(printing))
        for (const auto& form : paper::loan_forms(printing.from, student))
            all.push_back({fmt::format("{}, {}", student.name, form.horn.mark),
                           pages::loan_form(form, printing.words, printing.faces)});
    if (all.empty())
        throw units::Refusal(
            fmt::format("Nobody asked for has a horn of the school on {}.", printing.from.day.iso()));
    return all;
}

Documents cards(const BookPrinting& printing) {
    std::vector<studio::Horn> horns;
    for (const auto& mark : printing.asked.horns)
        horns.push_back(horn_marked(printing.from.file, mark));
    if (horns.empty()) {
        horns = printing.from.file.horns();
        std::erase_if(horns, [](const studio::Horn& horn) { return horn.archived; });
    }
    if (horns.empty()) throw units::Refusal("There is no horn in this studio yet.");
    Documents all;
    for (const auto& horn : horns)
        all.push_back({horn.mark, pages::horn_card(paper::horn_card(printing.from, horn), printing.words,
                                                   printing.faces)});
    return all;
}

}  // namespace

void add_book_options(CLI::App& verb, BookAsked& asked) {
    verb.add_option("--term", asked.term, "Of summaries and notes: the term; that of the day where left out")
        ->type_name("NAME");
    verb.add_option("--from", asked.first, "Of notes: the first day; the term's where left out")
        ->type_name("DATE");
    verb.add_option("--until", asked.last, "Of notes: the last day; the day of --on where left out")
        ->type_name("DATE");
    verb.add_option("--horn", asked.horns, "Of cards: only these horns")->type_name("MARK...");
    verb.add_option("--remark", asked.remark, "Of summaries: what you say; lines to write on where left out")
        ->type_name("TEXT");
}

const std::vector<BookPage>& book_pages() {
    static const std::vector<BookPage> all = {
        {"class", "Class list", "class (names, horns, whom to call)", class_list},
        {"day", "Lessons of the day", "day (the lessons of --on)", day_list},
        {"inventory", "Inventory", "inventory (all horns and mouthpieces)", inventory},
        {"repairs", "Repair list", "repairs (what waits for a technician)", repair_list},
        {"summaries", "Term summaries", "summaries (of a term, for parents)", summaries},
        {"notes", "Lesson notes", "notes (of lessons, --from and --until)", notes},
        {"loans", "Loan forms", "loans (forms to sign)", loans},
        {"cards", "Horns' cards", "cards (of horns)", cards}};
    return all;
}

}  // namespace lowledger::batch
