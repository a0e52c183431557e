#include <algorithm>

#include "app/desk/action.h"
#include "app/desk/day.h"
#include "app/desk/desk.h"
#include "app/desk/lesson_slips.h"
#include "app/desk/lessons.h"
#include "model/studio/calendar.h"

namespace lowledger::desk {
namespace {

using studio::Lesson;
using words::Sentence;

bool has_lesson(const Desk& desk) {
    return desk.may_write() && desk.lesson();
}

bool is_open_lesson(const Desk& desk) {
    return has_lesson(desk) && desk.lesson()->state != Lesson::State::moved;
}

/// Where lessons stand in a list, the chosen one is opened.
bool opens_lesson(const Desk& desk) {
    return desk.view().place == Place::today || desk.view().place == Place::terms;
}

/// The page stays, turned to that lesson's note.
void turn_to_note(Desk& desk, studio::LessonId lesson) {
    View view = desk.view();
    view.lesson = lesson;
    if (view.place == Place::students) view.section = Section::lesson_note;
    desk.go(view);
    desk.front().show_section();
}

/// As long as the student's lessons are.
std::chrono::minutes usual_length(const Desk& desk, studio::StudentId student) {
    constexpr int year = 365;
    const auto lessons = desk.file().lessons(student, desk.today() - year, desk.today());
    return lessons.empty() ? Lesson{.on = desk.today()}.length : lessons.front().length;
}

/// The day's lesson of the student on the page; planned now where none stands.
void begin_lesson(Desk& desk) {
    if (opens_lesson(desk)) {
        open_lesson(desk, desk.lesson()->id);
        return;
    }
    View today = desk.view();
    today.lesson.reset();
    if (const auto there = lesson_at(desk.file(), today, desk.today())) {
        turn_to_note(desk, there->id);
        return;
    }
    const auto& student = *desk.student();
    const Lesson lesson{.id = {},
                        .student = student.id,
                        .on = desk.today(),
                        .starts = desk.now(),
                        .length = usual_length(desk, student.id)};
    studio::LessonId added;
    desk.file().edit(desk.words().say(Sentence::edit_lesson_begin, {{"name", student.name}}),
                     [&](store::Edit& edit) { added = edit.add(lesson); });
    turn_to_note(desk, added);
}

void move_lesson(Desk& desk) {
    constexpr int week = 7;
    Lesson lesson = *desk.lesson();
    const auto name = who_has(desk.file(), lesson);
    const auto wanted = ask_when(desk, desk.words().say(Sentence::slip_move_lesson, {{"name", name}}),
                                 desk.words().say(Sentence::verb_move), lesson.on + week, lesson.starts);
    if (!wanted) return;
    const Lesson later = studio::moved(lesson, wanted->on, wanted->starts);
    desk.file().edit(desk.words().say(Sentence::edit_lesson_move, {{"name", name}}), [&](store::Edit& edit) {
        edit.update(lesson);
        edit.add(later);
    });
}

void add_lesson(Desk& desk) {
    const auto lesson = ask_new_lesson(desk);
    if (!lesson) return;
    desk.file().edit(desk.words().say(Sentence::edit_lesson_add, {{"name", who_has(desk.file(), *lesson)}}),
                     [&](store::Edit& edit) { edit.add(*lesson); });
}

/// The lesson that a make-up is owed for and was not arranged yet: the one turned to, else the student's
/// oldest.
std::optional<Lesson> owed_lesson(const Desk& desk) {
    if (!desk.may_write()) return std::nullopt;
    const auto student = student_on_page(desk);
    const auto& shown = desk.lesson();
    if (!student && !shown) return std::nullopt;
    const auto lessons = desk.file().lessons_to_make_up();
    std::optional<Lesson> found;
    for (const auto& owed : studio::make_ups_owed(lessons)) {
        if (owed.arranged) continue;
        const auto& lesson = *std::ranges::find(lessons, owed.missed, &Lesson::id);
        if (shown && shown->id == lesson.id) return lesson;
        if (!found && student && lesson.student == student) found = lesson;
    }
    return found;
}

void arrange_make_up(Desk& desk) {
    constexpr int week = 7;
    const auto missed = owed_lesson(desk);
    if (!missed) return;
    const auto name = who_has(desk.file(), *missed);
    const auto wanted = ask_when(desk, desk.words().say(Sentence::slip_make_up, {{"name", name}}),
                                 desk.words().say(Sentence::verb_arrange),
                                 std::max(desk.today(), missed->on) + week, missed->starts);
    if (!wanted) return;
    const Lesson make_up{.id = {},
                         .student = missed->student,
                         .group = missed->group,
                         .on = wanted->on,
                         .starts = wanted->starts,
                         .length = missed->length,
                         .room = missed->room,
                         .instead_of = missed->id};
    desk.file().edit(desk.words().say(Sentence::edit_lesson_make_up, {{"name", name}}),
                     [&](store::Edit& edit) { edit.add(make_up); });
}

void remove_lesson(Desk& desk) {
    const Lesson lesson = *desk.lesson();
    const auto name = who_has(desk.file(), lesson);
    const auto question = desk.words().say(Sentence::ask_remove_lesson,
                                           {{"name", name}, {"date", day_title(desk.words(), lesson.on)}});
    if (!desk.front().confirm(question, desk.words().say(Sentence::verb_remove))) return;
    desk.file().edit(desk.words().say(Sentence::edit_lesson_remove, {{"name", name}}),
                     [&](store::Edit& edit) { edit.remove(lesson.id); });
}

Action outcome_action(std::string_view id, std::string_view text, std::string_view key,
                      std::string_view outcome) {
    return {.id = id,
            .menu = Menu::lesson,
            .text = text,
            .key = key,
            .edits = true,
            .starts_group = outcome == "kept",
            .may_run =
                [outcome](const Desk& desk) {
                    return is_open_lesson(desk) &&
                           outcome_of(*desk.lesson(), student_on_page(desk)) != outcome;
                },
            .run = [outcome](Desk& desk) { file_outcome(desk, outcome); }};
}

Action cancel_action() {
    auto action = outcome_action("lesson.cancel", "&Cancelled", {}, "cancelled");
    // Of a group's lesson on a student's page only the student is spoken of.
    action.may_run = [](const Desk& desk) {
        return is_open_lesson(desk) && desk.lesson()->state != Lesson::State::cancelled &&
               !(desk.lesson()->group && student_on_page(desk));
    };
    return action;
}

}  // namespace

std::vector<Action> lesson_actions() {
    return {
        {.id = "lesson.begin",
         .menu = Menu::lesson,
         .text = "&Begin today's lesson",
         .key = "F5",
         .edits = true,
         .may_run =
             [](const Desk& desk) {
                 if (opens_lesson(desk)) return desk.lesson().has_value();
                 return desk.may_write() && desk.student();
             },
         .run = begin_lesson,
         .full_text =
             [](const Desk& desk) {
                 return std::string(opens_lesson(desk) ? "Open the &lesson" : "&Begin today's lesson");
             }},
        {.id = "lesson.add",
         .menu = Menu::lesson,
         .text = "&Add a lesson…",
         .key = "Ctrl+J",
         .edits = true,
         .may_run = [](const Desk& desk) { return desk.may_write() && may_have_lesson(desk); },
         .run = add_lesson},
        outcome_action("lesson.kept", "&Kept", "F7", "kept"),
        outcome_action("lesson.notice", "&Missed with notice", "F8", "notice"),
        outcome_action("lesson.no_notice", "Missed with&out notice", "Shift+F8", "no notice"),
        cancel_action(),
        {.id = "lesson.attendance",
         .menu = Menu::lesson,
         .text = "Who was &there…",
         .key = "F9",
         .edits = true,
         .may_run =
             [](const Desk& desk) {
                 return is_open_lesson(desk) && desk.lesson()->group && studio::takes_place(*desk.lesson());
             },
         .run = take_attendance},
        {.id = "lesson.move",
         .menu = Menu::lesson,
         .text = "Move to another &day…",
         .key = "Ctrl+Shift+M",
         .edits = true,
         .starts_group = true,
         .may_run = is_open_lesson,
         .run = move_lesson},
        {.id = "lesson.make_up",
         .menu = Menu::lesson,
         .text = "Arrange a make-&up lesson…",
         .edits = true,
         .may_run = [](const Desk& desk) { return owed_lesson(desk).has_value(); },
         .run = arrange_make_up},
        {.id = "lesson.remove",
         .menu = Menu::lesson,
         .text = "&Remove the lesson…",
         .edits = true,
         .starts_group = true,
         .may_run = has_lesson,
         .run = remove_lesson},
    };
}

}  // namespace lowledger::desk
