#include <span>

#include "app/desk/action.h"
#include "app/desk/day.h"
#include "app/desk/desk.h"
#include "app/desk/lesson_slips.h"
#include "app/desk/lessons.h"
#include "app/desk/slip.h"
#include "app/desk/term_lists.h"
#include "model/studio/calendar.h"
#include "reports/words/routine_words.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

bool shows_timetable(const Desk& desk) {
    return at_terms(desk, Section::timetable);
}

bool shows_lessons(const Desk& desk) {
    return at_terms(desk, Section::lessons);
}

bool may_add(const Desk& desk) {
    return desk.may_write() && shows_timetable(desk) && may_have_lesson(desk);
}

bool may_make(const Desk& desk) {
    return desk.may_write() && (shows_timetable(desk) || shows_lessons(desk));
}

bool has_slot(const Desk& desk) {
    return desk.may_write() && chosen_slot(desk).has_value();
}

std::vector<SlipChoice> weekdays(const words::Words& words) {
    std::vector<SlipChoice> days;
    for (int day = 1; day <= 7; ++day)
        days.push_back({std::to_string(day), words::weekday_name(words, day)});
    return days;
}

std::optional<studio::TimetableSlot> ask_slot(Desk& desk, Sentence title, studio::TimetableSlot slot) {
    const auto& words = desk.words();
    Slip slip(words.say(title), words.say(Sentence::verb_keep));
    slip.note(words.say(Sentence::note_slot_clash));
    ask_whose(slip, desk, {.student = slot.student, .group = slot.group});
    slip.choice("weekday", words.say(Sentence::slip_weekday), weekdays(words), std::to_string(slot.weekday));
    ask_time(slip, words, slot.starts);
    ask_length(slip, words, slot.length);
    slip.text("room", words.say(Sentence::slip_room), slot.room)
        .choice("every", words.say(Sentence::slip_every),
                {{"1", words.say(Sentence::every_week)}, {"2", words.say(Sentence::every_other_week)}},
                std::to_string(slot.every_weeks))
        .date_or_none("from", words.say(Sentence::slip_slot_from), slot.from)
        .date_or_none("last", words.say(Sentence::slip_slot_last),
                      slot.until ? std::optional(*slot.until - 1) : std::nullopt)
        .must([&words, term = *desk.term()](const SlipAnswers& answers) -> std::optional<SlipProblem> {
            const auto from = answers.date_or_none("from").value_or(term.first);
            const auto last = answers.date_or_none("last").value_or(term.last);
            if (last < from) return SlipProblem{"last", words.say(Sentence::must_end_later)};
            if (term.last < from) return SlipProblem{"from", words.say(Sentence::must_lie_in_term)};
            if (last < term.first) return SlipProblem{"last", words.say(Sentence::must_lie_in_term)};
            return std::nullopt;
        });
    const auto answers = desk.front().ask(slip);
    if (!answers) return std::nullopt;
    const auto of = whose(*answers);
    slot.student = of.student;
    slot.group = of.group;
    slot.weekday = std::stoi(answers->chosen("weekday"));
    slot.starts = time_of(*answers);
    slot.length = length_of(*answers);
    slot.room = answers->text("room");
    slot.every_weeks = std::stoi(answers->chosen("every"));
    slot.from = answers->date_or_none("from");
    const auto last = answers->date_or_none("last");
    slot.until = last ? std::optional(*last + 1) : std::nullopt;
    return slot;
}

/// The next lesson of a day usually follows the last one.
studio::TimetableSlot next_slot(const Desk& desk) {
    constexpr int afternoon = 14;
    studio::TimetableSlot next{.id = {}, .term = desk.term()->id, .starts = studio::TimeOfDay(afternoon, 0)};
    if (const auto chosen = chosen_slot(desk)) {
        const auto end = chosen->starts.minutes() + static_cast<int>(chosen->length.count());
        next.weekday = chosen->weekday;
        next.length = chosen->length;
        next.room = chosen->room;
        if (end < studio::TimeOfDay(23, 59).minutes()) next.starts = studio::TimeOfDay::from_minutes(end);
    }
    return next;
}

void add_slot(Desk& desk) {
    const auto slot = ask_slot(desk, Sentence::title_add_slot, next_slot(desk));
    if (!slot) return;
    studio::TimetableSlotId added;
    desk.file().edit(desk.words().say(Sentence::edit_add_slot, {{"who", who_has(desk.file(), *slot)}}),
                     [&](store::Edit& edit) { added = edit.add(*slot); });
    desk.choose(Table::timetable, added.number);
}

void change_slot(Desk& desk) {
    const auto slot = ask_slot(desk, Sentence::title_change_slot, *chosen_slot(desk));
    if (!slot) return;
    desk.file().edit(desk.words().say(Sentence::edit_change_slot, {{"who", who_has(desk.file(), *slot)}}),
                     [&](store::Edit& edit) { edit.update(*slot); });
}

void remove_slot(Desk& desk) {
    const auto slot = *chosen_slot(desk);
    const auto& words = desk.words();
    const auto who = who_has(desk.file(), slot);
    if (!desk.front().confirm(words.say(Sentence::ask_remove_slot, {{"who", who}}),
                              words.say(Sentence::verb_remove)))
        return;
    desk.file().edit(words.say(Sentence::edit_remove_slot, {{"who", who}}),
                     [&](store::Edit& edit) { edit.remove(slot.id); });
}

void make_lessons(Desk& desk) {
    const studio::Term term = *desk.term();
    const auto& words = desk.words();
    const auto plan = lessons_to_make(desk, term);
    if (plan.nothing()) {
        const bool empty = desk.file().timetable(term.id).empty();
        desk.front().say(words.say(empty ? Sentence::said_empty_timetable : Sentence::said_nothing_to_make));
        return;
    }
    desk.file().edit(words.say(Sentence::edit_make_lessons, {{"name", term.name}}), [&](store::Edit& edit) {
        for (const auto id : plan.gone)
            edit.remove(id);
        for (const auto& lesson : plan.made)
            edit.add(lesson);
    });
    View view = desk.view();
    view.section = Section::lessons;
    desk.go(view);
    desk.front().show_section();
    const auto now = lessons_of(desk, term);
    const auto clashes = studio::clashes(std::span(now)).size();
    if (clashes > 0)
        desk.front().say(words.say_counted(Sentence::said_clashes_one, Sentence::said_clashes_many,
                                           static_cast<int>(clashes)));
}

}  // namespace

std::vector<Action> timetable_actions() {
    return {{.id = "slot.add",
             .menu = Menu::term,
             .text = "Add to the &timetable…",
             .edits = true,
             .starts_group = true,
             .may_run = may_add,
             .run = add_slot,
             .shown = shows_timetable},
            {.id = "slot.change",
             .menu = Menu::term,
             .text = "Chan&ge in the timetable…",
             .edits = true,
             .may_run = has_slot,
             .run = change_slot,
             .shown = shows_timetable},
            {.id = "slot.remove",
             .menu = Menu::term,
             .text = "Take &off the timetable…",
             .edits = true,
             .may_run = has_slot,
             .run = remove_slot,
             .shown = shows_timetable},
            {.id = "lesson.make",
             .menu = Menu::term,
             .text = "Ma&ke the term's lessons",
             .edits = true,
             .starts_group = true,
             .may_run = may_make,
             .run = make_lessons,
             .shown = [](const Desk& desk) { return shows_timetable(desk) || shows_lessons(desk); }}};
}

}  // namespace lowledger::desk
