#include <string>
#include <utility>

#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/group_answers.h"
#include "app/desk/pass_notes.h"
#include "app/desk/routine_lists.h"
#include "app/desk/whom.h"
#include "reports/pages/chart_page.h"
#include "reports/pages/named.h"
#include "reports/pages/pass_sheet.h"
#include "reports/pages/routine_sheet.h"
#include "reports/pages/settings_table.h"
#include "reports/pages/strips_page.h"
#include "reports/pages/tuning_form.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

bool has_studio(const Desk& desk) {
    return desk.has_studio();
}

bool at_students(const Desk& desk) {
    return desk.view().place == Place::students;
}

bool at_horns(const Desk& desk) {
    return desk.view().place == Place::horns;
}

Slip slip_for(const Desk& desk, Sentence title, bool shown_first) {
    Slip slip(desk.words().say(title), desk.words().say(Sentence::print_show));
    ask_whom(slip, desk, shown_first);
    return slip;
}

void ask_large(Slip& slip, const Desk& desk) {
    slip.check("large", desk.words().say(Sentence::print_large), false);
}

pages::PageStyle style_of(const Desk& desk, const SlipAnswers& answers) {
    return {.paper = pages::paper_of(desk.file().facts()), .large_print = answers.checked("large")};
}

/// "Section pass 2026-11-25"
std::string file_name(const Desk& desk, Sentence title) {
    return desk.words().say(title) + " " + desk.today().iso();
}

void show(
    Desk& desk, canvas::Document document, Sentence title, std::function<void()> handed_on = [] {}) {
    desk.front().show_document(std::move(document), file_name(desk, title), std::move(handed_on));
}

using OnePage = canvas::Document (*)(const PlayerAnswer&, const words::Words&, const canvas::Faces&);

/// A page for each, one document with bookmarks.
canvas::Document one_each(Desk& desk, const std::vector<PlayerAnswer>& answers, Sentence title,
                          OnePage make) {
    std::vector<pages::NamedDocument> documents;
    documents.reserve(answers.size());
    for (const auto& answer : answers)
        documents.push_back({name_of({answer.page.student, answer.page.horn, answer.page.kind}),
                             make(answer, desk.words(), desk.front().faces())});
    return pages::as_one(documents, desk.words().say(title));
}

void print_handouts(Desk& desk) {
    Slip slip = slip_for(desk, Sentence::print_handouts, false);
    ask_large(slip, desk);
    const auto wanted = desk.front().ask(slip);
    if (!wanted) return;
    const auto answers = answers_for(desk, players_chosen(desk, *wanted), wanted->checked("large"));
    if (answers.empty()) return;
    show(desk,
         one_each(desk, answers, Sentence::print_handouts,
                  [](const PlayerAnswer& answer, const words::Words& words, const canvas::Faces& faces) {
                      return pages::handout(answer.page, words, faces);
                  }),
         Sentence::print_handouts, [&desk, answers] { give_out(desk, answers); });
}

canvas::Document chart_of(const PlayerAnswer& answer, const words::Words& words, const canvas::Faces& faces) {
    const auto& page = answer.page;
    return pages::chart_page(
        {.kind = page.kind,
         .style = pages::note_style(page),
         .horn = pages::ChartOfHorn{page.horn.mark, page.student.name, page.answer.profile},
         .paper = page.paper,
         .large_print = page.large_print},
        words, faces);
}

void print_charts(Desk& desk) {
    Slip slip = slip_for(desk, Sentence::print_charts, false);
    ask_large(slip, desk);
    const auto wanted = desk.front().ask(slip);
    if (!wanted) return;
    const auto answers = answers_for(desk, players_chosen(desk, *wanted), wanted->checked("large"));
    if (!answers.empty())
        show(desk, one_each(desk, answers, Sentence::print_charts, chart_of), Sentence::print_charts);
}

void print_strips(Desk& desk) {
    const auto wanted = desk.front().ask(slip_for(desk, Sentence::print_strips, true));
    if (!wanted) return;
    const auto answers = answers_for(desk, players_chosen(desk, *wanted), false);
    if (answers.empty()) return;
    show(desk,
         one_each(desk, answers, Sentence::print_strips,
                  [](const PlayerAnswer& answer, const words::Words& words, const canvas::Faces& faces) {
                      return pages::strips_page(answer.page, words, faces);
                  }),
         Sentence::print_strips);
}

/// Of those who have a routine in that week.
void print_routines(Desk& desk) {
    const auto& words = desk.words();
    Slip slip = slip_for(desk, Sentence::print_routines, true);
    slip.date("week", words.say(Sentence::print_week), desk.today());
    ask_large(slip, desk);
    const auto wanted = desk.front().ask(slip);
    if (!wanted) return;
    const auto day = wanted->date("week");
    std::vector<pages::NamedDocument> sheets;
    for (const auto& student : students_chosen(desk, *wanted)) {
        const auto sheet = routine_sheet_of(desk.file(), student, day, style_of(desk, *wanted));
        if (sheet.routines.empty()) continue;
        sheets.push_back({student.name, pages::routine_sheet(sheet, words, desk.front().faces())});
    }
    if (sheets.empty())
        throw units::Refusal(
            words.say(Sentence::nobody_has_routines, {{"date", words::date_text(words, day)}}));
    show(desk, pages::as_one(sheets, words.say(Sentence::print_routines)), Sentence::print_routines);
}

void print_settings(Desk& desk) {
    Slip slip = slip_for(desk, Sentence::print_settings, false);
    ask_large(slip, desk);
    const auto wanted = desk.front().ask(slip);
    if (!wanted) return;
    const auto answers = answers_for(desk, players_chosen(desk, *wanted), wanted->checked("large"));
    if (answers.empty()) return;
    std::vector<pages::HandoutInputs> rows;
    rows.reserve(answers.size());
    for (const auto& answer : answers)
        rows.push_back(answer.page);
    show(desk,
         pages::settings_table(rows, desk.file().facts(), desk.today(), style_of(desk, *wanted), desk.words(),
                               desk.front().faces()),
         Sentence::print_settings);
}

void print_pass(Desk& desk) {
    Slip slip = slip_for(desk, Sentence::pass_title, false);
    ask_pass_notes(slip, desk);
    ask_large(slip, desk);
    const auto wanted = desk.front().ask(slip);
    if (!wanted) return;
    const auto players = players_chosen(desk, *wanted);
    show(desk,
         pages::pass_sheet(players, pass_notes(desk, *wanted), desk.file().facts(), desk.today(),
                           style_of(desk, *wanted), desk.words(), desk.front().faces()),
         Sentence::pass_title);
}

void print_forms(Desk& desk) {
    Slip slip = slip_for(desk, Sentence::form_title, false);
    ask_large(slip, desk);
    const auto wanted = desk.front().ask(slip);
    if (!wanted) return;
    const auto players = players_chosen(desk, *wanted);
    show(desk,
         pages::tuning_forms(players, desk.file().facts(), desk.today(), style_of(desk, *wanted),
                             desk.words(), desk.front().faces()),
         Sentence::form_title);
}

}  // namespace

std::vector<Action> print_actions() {
    return {
        {.id = "handout.print",
         .menu = Menu::print,
         .text = "&Print handout…",
         .key = "Ctrl+P",
         .may_run = [](const Desk& desk) { return desk.answer().there(); },
         .run = [](Desk& desk) { desk.front().show_handout(); },
         .shown = at_students},
        {.id = "chart.print",
         .menu = Menu::print,
         .text = "&Print chart…",
         .key = "Ctrl+P",
         .may_run = [](const Desk& desk) { return at_horns(desk) && desk.horn(); },
         .run = [](Desk& desk) { desk.front().show_chart(desk.horn_chart()->chart()); },
         .shown = at_horns},
        {.id = "print.strips",
         .menu = Menu::print,
         .text = "Slide s&trips…",
         .may_run = has_studio,
         .run = print_strips},
        {.id = "print.routines",
         .menu = Menu::print,
         .text = "Routin&e sheets…",
         .key = "Ctrl+Shift+W",
         .may_run = has_studio,
         .run = print_routines},
        {.id = "print.handouts",
         .menu = Menu::print,
         .text = "&Handouts of a group…",
         .key = "Ctrl+Shift+P",
         .starts_group = true,
         .may_run = has_studio,
         .run = print_handouts},
        {.id = "print.charts",
         .menu = Menu::print,
         .text = "&Charts of a group…",
         .may_run = has_studio,
         .run = print_charts},
        {.id = "print.settings",
         .menu = Menu::print,
         .text = "&Slide settings of the studio…",
         .may_run = has_studio,
         .run = print_settings},
        {.id = "print.pass",
         .menu = Menu::print,
         .text = "Sect&ion pass…",
         .starts_group = true,
         .may_run = has_studio,
         .run = print_pass},
        {.id = "print.forms",
         .menu = Menu::print,
         .text = "&Blank tuning sheets…",
         .may_run = has_studio,
         .run = print_forms},
    };
}

}  // namespace lowledger::desk
