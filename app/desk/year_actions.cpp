#include <algorithm>
#include <array>

#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/lending.h"
#include "app/desk/slip.h"
#include "app/desk/term_lists.h"
#include "app/desk/year_end.h"
#include "model/studio/file_words.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using studio::Student;
using studio::Upkeep;
using words::Sentence;

bool shows_years_end(const Desk& desk) {
    return at_terms(desk, Section::years_end);
}

bool has_item(const Desk& desk) {
    return desk.may_write() && chosen_item(desk).has_value();
}

void see_to(Desk& desk, const studio::Loan& loan) {
    if (const auto horn = desk.file().horn(loan.horn)) bring_back(desk, *horn, loan);
}

/// Looks the horn over: its condition, and what is to be repaired.
void see_to(Desk& desk, studio::Horn horn) {
    const auto& words = desk.words();
    Slip slip(words.say(Sentence::title_check_horn, {{"mark", horn.mark}}),
              words.say(Sentence::verb_checked));
    slip.text("condition", words.say(Sentence::field_condition), horn.condition)
        .text("to_repair", words.say(Sentence::field_to_repair), {}, words.say(Sentence::hint_to_repair));
    const auto answers = desk.front().ask(slip);
    if (!answers) return;
    horn.condition = answers->text("condition");
    Upkeep check{.id = {}, .horn = horn.id, .work = Upkeep::Work::checked, .noted_on = desk.today()};
    check.done_on = desk.today();
    Upkeep repair{.id = {}, .horn = horn.id, .work = Upkeep::Work::repaired, .noted_on = desk.today()};
    repair.what = answers->text("to_repair");
    desk.file().edit(words.say(Sentence::edit_check_horn, {{"mark", horn.mark}}), [&](store::Edit& edit) {
        edit.update(horn);
        edit.add(check);
        if (!repair.what.empty()) edit.add(repair);
    });
}

void see_to(Desk& desk, Upkeep work) {
    const auto& words = desk.words();
    const auto horn = desk.file().horn(*work.horn);
    const std::string mark = horn ? horn->mark : std::string();
    Slip slip(words.say(Sentence::title_repaired, {{"mark", mark}}), words.say(Sentence::verb_done));
    slip.note(work.what)
        .date("done_on", words.say(Sentence::field_done_on), std::max(desk.today(), work.noted_on))
        .text("by", words.say(Sentence::field_by), work.by)
        .must([&words, noted = work.noted_on](const SlipAnswers& answers) -> std::optional<SlipProblem> {
            if (answers.date("done_on") >= noted) return std::nullopt;
            return SlipProblem{"done_on", words.say(Sentence::year_done_before_noted)};
        });
    ask_money(slip, desk, "cost", Sentence::field_cost, work.cost);
    const auto answers = desk.front().ask(slip);
    if (!answers) return;
    work.done_on = answers->date("done_on");
    work.by = answers->text("by");
    work.cost = money_of(desk, *answers, "cost");
    desk.file().edit(words.say(Sentence::edit_repaired, {{"mark", mark}}),
                     [&](store::Edit& edit) { edit.update(work); });
}

std::vector<SlipChoice> level_choices(const words::Words& words) {
    std::vector<SlipChoice> choices;
    for (const auto level : {studio::Level::beginner, studio::Level::middle, studio::Level::advanced})
        choices.push_back({std::string(studio::file_word(level)), words::level_name(words, level)});
    return choices;
}

/// The next school year and level of one student, or that the student leaves.
void see_to(Desk& desk, Student student) {
    const auto& words = desk.words();
    Slip slip(words.say(Sentence::title_move_up, {{"name", student.name}}), words.say(Sentence::verb_keep));
    slip.text("year", words.say(Sentence::field_year), next_year(student.year))
        .choice("level", words.say(Sentence::field_level), level_choices(words),
                studio::file_word(student.level))
        .check("leaves", words.say(Sentence::field_leaves), false);
    const auto answers = desk.front().ask(slip);
    if (!answers) return;
    student.archived = answers->checked("leaves");
    if (!student.archived) {
        student.year = answers->text("year");
        student.level = *studio::parse_level(answers->chosen("level"));
    }
    const auto name = student.archived ? Sentence::edit_leaves : Sentence::edit_moves_up;
    desk.file().edit(words.say(name, {{"name", student.name}}),
                     [&](store::Edit& edit) { edit.update(student); });
}

void see_to_chosen(Desk& desk) {
    std::visit([&](const auto& record) { see_to(desk, record); }, *chosen_item(desk));
}

/// Every horn that is out, in the condition it went out in.
void all_back(Desk& desk) {
    const auto& words = desk.words();
    auto out = desk.file().loans_out();
    Slip slip(words.say(Sentence::title_all_back), words.say(Sentence::back_verb));
    slip.note(words.say(Sentence::note_all_back, {{"count", std::to_string(out.size())}}))
        .date("until", words.say(Sentence::field_on), desk.today())
        .must([&words, out](const SlipAnswers& answers) -> std::optional<SlipProblem> {
            if (std::ranges::all_of(out,
                                    [&](const auto& loan) { return loan.from <= answers.date("until"); }))
                return std::nullopt;
            return SlipProblem{"until", words.say(Sentence::year_back_before)};
        });
    const auto answers = desk.front().ask(slip);
    if (!answers) return;
    desk.file().edit(words.say(Sentence::edit_all_back), [&](store::Edit& edit) {
        for (auto& loan : out) {
            loan.until = answers->date("until");
            loan.condition_in = loan.condition_out;
            edit.update(loan);
        }
    });
}

/// School years go up by one, and those chosen leave.
void all_up(Desk& desk) {
    const auto& words = desk.words();
    const auto students = student_choices(desk);
    if (students.empty()) throw units::Refusal(words.say(Sentence::year_no_students));
    Slip slip(words.say(Sentence::title_all_up), words.say(Sentence::verb_move_up));
    slip.note(words.say(Sentence::note_all_up))
        .check("years", words.say(Sentence::field_years_up), true)
        .several("leaves", words.say(Sentence::field_who_leaves), students, {});
    const auto answers = desk.front().ask(slip);
    if (!answers) return;
    const auto leaves = answers->several("leaves");
    desk.file().edit(words.say(Sentence::edit_all_up), [&](store::Edit& edit) {
        for (auto student : desk.file().students()) {
            if (student.archived) continue;
            const auto before = student;
            if (std::ranges::find(leaves, key_of(student.id)) != leaves.end())
                student.archived = true;
            else if (answers->checked("years"))
                student.year = next_year(student.year);
            if (student != before) edit.update(student);
        }
    });
}

}  // namespace

std::vector<Action> year_actions() {
    return {{.id = "year.see_to",
             .menu = Menu::term,
             .text = "&See to it…",
             .edits = true,
             .starts_group = true,
             .may_run = has_item,
             .run = see_to_chosen,
             .shown = shows_years_end},
            {.id = "year.all_back",
             .menu = Menu::term,
             .text = "All horns are &back…",
             .edits = true,
             .may_run =
                 [](const Desk& desk) {
                     return desk.may_write() && shows_years_end(desk) && !desk.file().loans_out().empty();
                 },
             .run = all_back,
             .shown = shows_years_end},
            {.id = "year.all_up",
             .menu = Menu::term,
             .text = "&Move all up…",
             .edits = true,
             .may_run = [](const Desk& desk) { return desk.may_write() && shows_years_end(desk); },
             .run = all_up,
             .shown = shows_years_end}};
}

}  // namespace lowledger::desk
