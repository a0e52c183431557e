#include <algorithm>

#include "app/desk/action.h"
#include "app/desk/lending.h"
#include "app/desk/places.h"
#include "model/studio/file_words.h"

namespace lowledger::desk {
namespace {

using studio::Upkeep;
using words::Sentence;

bool shows_upkeep(const Desk& desk) {
    return desk.view().place == Place::horns && section_of(desk.view()) == Section::upkeep;
}

bool has_horn(const Desk& desk) {
    return desk.may_write() && desk.horn();
}

bool has_upkeep(const Desk& desk) {
    return desk.may_write() && chosen_upkeep(desk).has_value();
}

std::vector<SlipChoice> work_choices(const words::Words& words) {
    std::vector<SlipChoice> choices;
    for (const auto work : {Upkeep::Work::checked, Upkeep::Work::cleaned, Upkeep::Work::disinfected,
                            Upkeep::Work::greased, Upkeep::Work::repaired, Upkeep::Work::other})
        choices.push_back({std::string(studio::file_word(work)), work_name(words, work)});
    return choices;
}

Slip upkeep_slip(const Desk& desk, const Upkeep& start, const std::string& verb) {
    const auto& words = desk.words();
    Slip slip(words.say(Sentence::upkeep_title, {{"mark", desk.horn()->mark}}), verb);
    slip.choice("work", words.say(Sentence::field_work), work_choices(words), studio::file_word(start.work))
        .text("what", words.say(Sentence::field_what), start.what)
        .date("noted_on", words.say(Sentence::field_noted_on), start.noted_on)
        .date_or_none("done_on", words.say(Sentence::field_done_on), start.done_on)
        .text("by", words.say(Sentence::field_by), start.by);
    ask_money(slip, desk, "cost", Sentence::field_cost, start.cost);
    slip.date_or_none("next_due", words.say(Sentence::field_next_due), start.next_due)
        .check("disinfected", words.say(Sentence::field_disinfected), start.disinfected)
        .must([&words](const SlipAnswers& answers) -> std::optional<SlipProblem> {
            const auto work = studio::parse_work(answers.chosen("work"));
            const bool says_nothing = work == Upkeep::Work::other || work == Upkeep::Work::repaired;
            if (says_nothing && answers.empty("what"))
                return SlipProblem{"what", words.say(Sentence::upkeep_needs_what)};
            const auto done = answers.date_or_none("done_on");
            if (done && *done < answers.date("noted_on"))
                return SlipProblem{"noted_on", words.say(Sentence::upkeep_done_before)};
            return std::nullopt;
        });
    return slip;
}

Upkeep upkeep_of(const Desk& desk, const SlipAnswers& answers, Upkeep work) {
    work.work = *studio::parse_work(answers.chosen("work"));
    work.what = answers.text("what");
    work.noted_on = answers.date("noted_on");
    work.done_on = answers.date_or_none("done_on");
    work.by = answers.text("by");
    work.cost = money_of(desk, answers, "cost");
    work.next_due = answers.date_or_none("next_due");
    work.disinfected = answers.checked("disinfected");
    return work;
}

void add_upkeep(Desk& desk) {
    const auto& words = desk.words();
    const auto horn = desk.horn()->id;
    const Upkeep start{.id = {}, .horn = horn, .noted_on = desk.today()};
    const auto answers = desk.front().ask(upkeep_slip(desk, start, words.say(Sentence::verb_add)));
    if (!answers) return;
    desk.file().edit(words.say(Sentence::edit_add_upkeep, {{"mark", desk.horn()->mark}}),
                     [&](store::Edit& edit) { edit.add(upkeep_of(desk, *answers, start)); });
}

void change_upkeep(Desk& desk) {
    const auto& words = desk.words();
    const Upkeep start = *chosen_upkeep(desk);
    const auto answers = desk.front().ask(upkeep_slip(desk, start, words.say(Sentence::verb_keep)));
    if (!answers) return;
    desk.file().edit(words.say(Sentence::edit_change_upkeep, {{"mark", desk.horn()->mark}}),
                     [&](store::Edit& edit) { edit.update(upkeep_of(desk, *answers, start)); });
}

/// Work that is due again is done anew as an entry of its own, so that the old one stays in the log.
void upkeep_done(Desk& desk) {
    Upkeep work = *chosen_upkeep(desk);
    const auto name = desk.words().say(Sentence::edit_upkeep_done, {{"mark", desk.horn()->mark}});
    if (!work.done_on) {
        work.done_on = std::max(desk.today(), work.noted_on);
        desk.file().edit(name, [&](store::Edit& edit) { edit.update(work); });
        return;
    }
    Upkeep again{.id = {}, .horn = work.horn, .work = work.work, .noted_on = desk.today()};
    again.done_on = desk.today();
    again.what = work.what;
    again.by = work.by;
    if (work.next_due) again.next_due = desk.today() + (*work.next_due - *work.done_on);
    desk.file().edit(name, [&](store::Edit& edit) { edit.add(again); });
}

void remove_upkeep(Desk& desk) {
    const auto& words = desk.words();
    const Upkeep work = *chosen_upkeep(desk);
    const auto mark = desk.horn()->mark;
    const auto what = work_name(words, work.work) + (work.what.empty() ? "" : ", " + work.what);
    const auto question = words.say(Sentence::ask_remove_upkeep, {{"mark", mark}, {"work", what}});
    if (!desk.front().confirm(question, words.say(Sentence::verb_remove))) return;
    desk.file().edit(words.say(Sentence::edit_remove_upkeep, {{"mark", mark}}),
                     [&](store::Edit& edit) { edit.remove(work.id); });
}

}  // namespace

std::vector<Action> upkeep_actions() {
    return {
        {.id = "upkeep.add",
         .menu = Menu::horn,
         .text = "Note &upkeep…",
         .key = "Ctrl+Shift+K",
         .edits = true,
         .starts_group = true,
         .may_run = has_horn,
         .run = add_upkeep},
        {.id = "upkeep.done",
         .menu = Menu::horn,
         .text = "&Done today",
         .key = "Ctrl+Shift+D",
         .edits = true,
         .may_run = has_upkeep,
         .run = upkeep_done,
         .shown = shows_upkeep},
        {.id = "upkeep.change",
         .menu = Menu::horn,
         .text = "Change upk&eep…",
         .edits = true,
         .may_run = has_upkeep,
         .run = change_upkeep,
         .shown = shows_upkeep},
        {.id = "upkeep.remove",
         .menu = Menu::horn,
         .text = "Rem&ove upkeep…",
         .edits = true,
         .may_run = has_upkeep,
         .run = remove_upkeep,
         .shown = shows_upkeep},
    };
}

}  // namespace lowledger::desk
