#include <algorithm>

#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/slip.h"
#include "app/desk/term_lists.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

bool has_term(const Desk& desk) {
    return desk.may_write() && desk.term();
}

/// A name and two days, the last not before the first.
Slip span_slip(const Desk& desk, Sentence title, const std::string& name, studio::Date first,
               studio::Date last) {
    const auto& words = desk.words();
    Slip slip(words.say(title), words.say(Sentence::verb_keep));
    slip.text("name", words.say(Sentence::slip_name), name)
        .date("first", words.say(Sentence::slip_first_day), first)
        .date("last", words.say(Sentence::slip_last_day), last)
        .needs("name", words.say(Sentence::must_have_name))
        .must([&words](const SlipAnswers& answers) -> std::optional<SlipProblem> {
            if (answers.date("first") <= answers.date("last")) return std::nullopt;
            return SlipProblem{"last", words.say(Sentence::must_end_later)};
        });
    return slip;
}

std::optional<studio::Term> ask_term(Desk& desk, Sentence title, studio::Term term) {
    Slip slip = span_slip(desk, title, term.name, term.first, term.last);
    slip.must([&desk, id = term.id](const SlipAnswers& answers) -> std::optional<SlipProblem> {
        const auto& words = desk.words();
        for (const auto& other : desk.file().terms())
            if (other.id != id && other.first <= answers.date("last") && answers.date("first") <= other.last)
                return SlipProblem{"first", words.say(Sentence::must_share_no_day,
                                                      {{"name", other.name},
                                                       {"first", words::date_text(words, other.first)},
                                                       {"last", words::date_text(words, other.last)}})};
        return std::nullopt;
    });
    slip.must([&desk, holidays = term.holidays](const SlipAnswers& answers) -> std::optional<SlipProblem> {
        for (const auto& holiday : holidays)
            if (holiday.last < answers.date("first") || answers.date("last") < holiday.first)
                return SlipProblem{"first",
                                   desk.words().say(Sentence::must_hold_holidays, {{"name", holiday.name}})};
        return std::nullopt;
    });
    const auto answers = desk.front().ask(slip);
    if (!answers) return std::nullopt;
    term.name = answers->text("name");
    term.first = answers->date("first");
    term.last = answers->date("last");
    return term;
}

void add_term(Desk& desk) {
    constexpr int months = 4;
    const auto terms = desk.file().terms();
    const studio::Date first = terms.empty() ? desk.today() : std::max(desk.today(), terms.back().last + 1);
    const auto term = ask_term(desk, Sentence::title_add_term,
                               {.id = {}, .first = first, .last = studio::months_later(first, months)});
    if (!term) return;
    studio::TermId added;
    desk.file().edit(desk.words().say(Sentence::edit_add_term, {{"name", term->name}}),
                     [&](store::Edit& edit) { added = edit.add(*term); });
    View view = desk.view();
    view.place = Place::terms;
    view.term = added;
    desk.go(view);
}

void change_term(Desk& desk) {
    const auto term = ask_term(desk, Sentence::title_change_term, *desk.term());
    if (!term) return;
    desk.file().edit(desk.words().say(Sentence::edit_change_term, {{"name", term->name}}),
                     [&](store::Edit& edit) { edit.update(*term); });
}

void remove_term(Desk& desk) {
    const studio::Term term = *desk.term();
    const auto& words = desk.words();
    if (!desk.front().confirm(words.say(Sentence::ask_remove_term, {{"name", term.name}}),
                              words.say(Sentence::verb_remove)))
        return;
    desk.file().edit(words.say(Sentence::edit_remove_term, {{"name", term.name}}),
                     [&](store::Edit& edit) { edit.remove(term.id); });
}

bool shows_holidays(const Desk& desk) {
    return at_terms(desk, Section::holidays);
}

bool may_add_holiday(const Desk& desk) {
    return desk.may_write() && shows_holidays(desk);
}

bool has_holiday(const Desk& desk) {
    return desk.may_write() && chosen_holiday(desk).has_value();
}

std::optional<studio::Holiday> ask_holiday(Desk& desk, Sentence title, const studio::Holiday& start) {
    Slip slip = span_slip(desk, title, start.name, start.first, start.last);
    slip.must([&desk](const SlipAnswers& answers) -> std::optional<SlipProblem> {
        const auto& term = *desk.term();
        if (answers.date("last") < term.first || term.last < answers.date("first"))
            return SlipProblem{"first", desk.words().say(Sentence::must_lie_in_term)};
        return std::nullopt;
    });
    const auto answers = desk.front().ask(slip);
    if (!answers) return std::nullopt;
    return studio::Holiday{answers->date("first"), answers->date("last"), answers->text("name")};
}

/// Files the term with its holidays in order, and chooses `kept` among them.
void file_holidays(Desk& desk, studio::Term term, Sentence edit_name, const studio::Holiday& kept) {
    std::ranges::stable_sort(term.holidays, {}, &studio::Holiday::first);
    desk.file().edit(desk.words().say(edit_name, {{"name", kept.name}}),
                     [&](store::Edit& edit) { edit.update(term); });
    const auto found = std::ranges::find(term.holidays, kept);
    if (found != term.holidays.end()) desk.choose(Table::holidays, found - term.holidays.begin() + 1);
}

void add_holiday(Desk& desk) {
    studio::Term term = *desk.term();
    const studio::Date day = std::clamp(desk.today(), term.first, term.last);
    const auto holiday = ask_holiday(desk, Sentence::title_add_holiday, {day, day});
    if (!holiday) return;
    term.holidays.push_back(*holiday);
    file_holidays(desk, std::move(term), Sentence::edit_add_holiday, *holiday);
}

void change_holiday(Desk& desk) {
    studio::Term term = *desk.term();
    auto& changed = term.holidays.at(*chosen_holiday(desk));
    const auto holiday = ask_holiday(desk, Sentence::title_change_holiday, changed);
    if (!holiday) return;
    changed = *holiday;
    file_holidays(desk, std::move(term), Sentence::edit_change_holiday, *holiday);
}

void remove_holiday(Desk& desk) {
    studio::Term term = *desk.term();
    const auto at = *chosen_holiday(desk);
    const studio::Holiday removed = term.holidays.at(at);
    term.holidays.erase(term.holidays.begin() + static_cast<std::ptrdiff_t>(at));
    file_holidays(desk, std::move(term), Sentence::edit_remove_holiday, removed);
}

Action term_action(std::string_view id, std::string_view text, bool (*may_run)(const Desk&),
                   void (*run)(Desk&), bool (*shown)(const Desk&) = nullptr, bool starts_group = false) {
    return {.id = id,
            .menu = Menu::term,
            .text = text,
            .edits = true,
            .starts_group = starts_group,
            .may_run = may_run,
            .run = run,
            .shown = shown};
}

}  // namespace

std::vector<Action> term_actions() {
    return {
        term_action(
            "term.add", "&Add term…", [](const Desk& desk) { return desk.may_write(); }, add_term),
        term_action("term.change", "&Change term…", has_term, change_term),
        term_action("term.remove", "&Remove term…", has_term, remove_term),
        term_action("holiday.add", "Add &holiday…", may_add_holiday, add_holiday, shows_holidays, true),
        term_action("holiday.change", "Cha&nge holiday…", has_holiday, change_holiday, shows_holidays),
        term_action("holiday.remove", "Remove ho&liday", has_holiday, remove_holiday, shows_holidays),
    };
}

}  // namespace lowledger::desk
