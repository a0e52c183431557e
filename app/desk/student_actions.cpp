#include <algorithm>

#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "model/studio/questions.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

bool has_student(const Desk& desk) {
    return desk.may_write() && desk.student();
}

void add_student(Desk& desk) {
    const auto wanted = desk.front().ask_student({});
    if (!wanted) return;
    studio::StudentId added;
    desk.file().edit(desk.words().say(Sentence::edit_add_student, {{"name", wanted->name}}),
                     [&](store::Edit& edit) { added = edit.add(*wanted); });
    desk.go({.place = Place::students, .student = added});
}

void change_student(Desk& desk) {
    const auto wanted = desk.front().ask_student(*desk.student());
    if (!wanted) return;
    desk.file().edit(desk.words().say(Sentence::edit_change_student, {{"name", wanted->name}}),
                     [&](store::Edit& edit) { edit.update(*wanted); });
}

/// Ends the student's uses that hold on `on`; one that began that very day never was.
void give_back(store::Edit& edit, const std::vector<studio::HornUse>& uses, studio::Date on) {
    for (auto use : uses) {
        if (!studio::holds_on(use, on)) continue;
        if (use.from == on) {
            edit.remove(use.id);
            continue;
        }
        use.until = on;
        edit.update(use);
    }
}

void choose_horn(Desk& desk) {
    const studio::Student student = *desk.student();
    const auto horns = desk.file().horns();
    if (std::ranges::all_of(horns, &studio::Horn::archived)) {
        throw units::Refusal(desk.words().say(Sentence::no_horn_to_choose));
    }
    const auto& played = desk.horns_of_student();
    const auto wanted = desk.front().ask_horn_of(
        student, {.horn = played.empty() ? studio::HornId{} : played.back().id, .from = desk.today()});
    if (!wanted) return;
    const auto uses = desk.file().horn_uses(student.id);
    const bool plays_it = std::ranges::any_of(uses, [&](const studio::HornUse& use) {
        return use.horn == wanted->horn && studio::holds_on(use, wanted->from);
    });
    if (plays_it && !wanted->instead) return;
    desk.file().edit(desk.words().say(Sentence::edit_choose_horn, {{"name", student.name}}),
                     [&](store::Edit& edit) {
                         if (wanted->instead) give_back(edit, uses, wanted->from);
                         edit.add(studio::HornUse{.id = {},
                                                  .student = student.id,
                                                  .horn = wanted->horn,
                                                  .from = wanted->from,
                                                  .until = std::nullopt});
                     });
}

void return_horns(Desk& desk) {
    const studio::Student student = *desk.student();
    const auto uses = desk.file().horn_uses(student.id);
    desk.file().edit(desk.words().say(Sentence::edit_return_horns, {{"name", student.name}}),
                     [&](store::Edit& edit) { give_back(edit, uses, desk.today()); });
}

void archive_student(Desk& desk) {
    studio::Student student = *desk.student();
    student.archived = !student.archived;
    const auto name = student.archived ? Sentence::edit_archive : Sentence::edit_unarchive;
    desk.file().edit(desk.words().say(name, {{"name", student.name}}),
                     [&](store::Edit& edit) { edit.update(student); });
}

/// What goes along with a student besides the tuning sheets; empty where nothing does.
std::string belongings_text(const words::Words& words, const studio::Belongings& all) {
    std::string out;
    const auto add = [&](int count, const std::string& text) {
        if (count > 0) out += (out.empty() ? "" : ", ") + text;
    };
    add(all.lessons,
        words.say_counted(Sentence::belongings_lessons_one, Sentence::belongings_lessons_many, all.lessons));
    add(all.loans,
        words.say_counted(Sentence::belongings_loans_one, Sentence::belongings_loans_many, all.loans));
    add(all.assignments + all.practice_entries, words.say(Sentence::belongings_practice));
    add(all.pieces + all.events, words.say(Sentence::belongings_events));
    add(all.settings, words.say(Sentence::belongings_settings, {{"count", std::to_string(all.settings)}}));
    add(all.horns + all.mouthpieces, words.say(Sentence::belongings_horns));
    return out;
}

void remove_student(Desk& desk) {
    const studio::Student student = *desk.student();
    const auto sheets = static_cast<int>(desk.file().sheets(student.id).size());
    const auto question =
        desk.words().say_counted(Sentence::ask_remove_student_one_sheet, Sentence::ask_remove_student, sheets,
                                 {{"name", student.name}});
    const auto belongings = belongings_text(desk.words(), desk.file().belongings(student.id));
    const auto whole = belongings.empty()
                           ? question
                           : desk.words().say(Sentence::ask_remove_student_with,
                                              {{"question", question}, {"belongings", belongings}});
    if (!desk.front().confirm(whole, desk.words().say(Sentence::verb_remove))) return;
    desk.file().edit(desk.words().say(Sentence::edit_remove, {{"name", student.name}}),
                     [&](store::Edit& edit) { edit.remove(student.id); });
}

}  // namespace

std::vector<Action> student_actions() {
    return {
        {.id = "student.add",
         .menu = Menu::student,
         .text = "&Add student…",
         .key = "Ctrl+N",
         .edits = true,
         .may_run = [](const Desk& desk) { return desk.may_write(); },
         .run = add_student},
        {.id = "student.change",
         .menu = Menu::student,
         .text = "&Change student…",
         .key = "F2",
         .edits = true,
         .may_run = has_student,
         .run = change_student},
        {.id = "student.horn",
         .menu = Menu::student,
         .text = "Choose &horn…",
         .key = "Ctrl+H",
         .edits = true,
         .starts_group = true,
         .may_run = has_student,
         .run = choose_horn},
        {.id = "student.return",
         .menu = Menu::student,
         .text = "&Give the horn back",
         .edits = true,
         .may_run = [](const Desk& desk) { return has_student(desk) && !desk.horns_of_student().empty(); },
         .run = return_horns},
        {.id = "student.archive",
         .menu = Menu::student,
         .text = "A&rchive student",
         .edits = true,
         .starts_group = true,
         .may_run = has_student,
         .run = archive_student,
         .full_text =
             [](const Desk& desk) {
                 const bool archived = desk.student() && desk.student()->archived;
                 return std::string(archived ? "Take out of the a&rchive" : "A&rchive student");
             }},
        {.id = "student.remove",
         .menu = Menu::student,
         .text = "Re&move student…",
         .edits = true,
         .may_run = has_student,
         .run = remove_student},
    };
}

}  // namespace lowledger::desk
