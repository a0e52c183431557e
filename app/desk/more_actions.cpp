#include "app/desk/action.h"
#include "app/desk/lending.h"
#include "model/studio/file_words.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

void more_of_horn(Desk& desk) {
    const auto& words = desk.words();
    studio::Horn horn = *desk.horn();
    Slip slip(words.say(Sentence::more_horn_title, {{"mark", horn.mark}}), words.say(Sentence::verb_keep));
    slip.text("tag", words.say(Sentence::field_tag), horn.inventory_tag)
        .text("belongs_to", words.say(Sentence::field_belongs_to), horn.belongs_to,
              words.say(Sentence::hint_belongs_to))
        .text("case", words.say(Sentence::field_case), horn.case_text)
        .text("locker", words.say(Sentence::field_locker), horn.locker)
        .text("accessories", words.say(Sentence::field_lies_in_case), horn.accessories)
        .text("condition", words.say(Sentence::field_condition), horn.condition);
    ask_money(slip, desk, "value", Sentence::field_value, horn.value);
    slip.date_or_none("bought_on", words.say(Sentence::field_bought_on), horn.bought_on);
    ask_money(slip, desk, "bought_for", Sentence::field_bought_for, horn.bought_for);
    const auto answers = desk.front().ask(slip);
    if (!answers) return;
    horn.inventory_tag = answers->text("tag");
    horn.belongs_to = answers->text("belongs_to");
    horn.case_text = answers->text("case");
    horn.locker = answers->text("locker");
    horn.accessories = answers->text("accessories");
    horn.condition = answers->text("condition");
    horn.value = money_of(desk, *answers, "value");
    horn.bought_on = answers->date_or_none("bought_on");
    horn.bought_for = money_of(desk, *answers, "bought_for");
    desk.file().edit(words.say(Sentence::edit_more_horn, {{"mark", horn.mark}}),
                     [&](store::Edit& edit) { edit.update(horn); });
}

std::vector<SlipChoice> at_home_choices(const words::Words& words) {
    const auto choice = [&](studio::AtHome at_home, Sentence name) {
        return SlipChoice{std::string(studio::file_word(at_home)), words.say(name)};
    };
    return {{"", words.say(Sentence::at_home_unknown)},
            choice(studio::AtHome::horn, Sentence::at_home_horn),
            choice(studio::AtHome::mouthpiece_only, Sentence::at_home_mouthpiece),
            choice(studio::AtHome::nothing, Sentence::at_home_nothing)};
}

void more_of_student(Desk& desk) {
    const auto& words = desk.words();
    studio::Student student = *desk.student();
    Slip slip(words.say(Sentence::more_student_title, {{"name", student.name}}),
              words.say(Sentence::verb_keep));
    slip.text("year", words.say(Sentence::field_year), student.year)
        .choice("at_home", words.say(Sentence::field_at_home), at_home_choices(words),
                student.at_home ? studio::file_word(*student.at_home) : std::string_view())
        .date_or_none("since", words.say(Sentence::field_since), student.since)
        .lines("goals", words.say(Sentence::field_goals), student.goals)
        .text("guardian", words.say(Sentence::field_guardian), student.guardian.name)
        .text("phone", words.say(Sentence::field_guardian_phone), student.guardian.phone)
        .text("e_mail", words.say(Sentence::field_guardian_mail), student.guardian.e_mail);
    const auto answers = desk.front().ask(slip);
    if (!answers) return;
    student.year = answers->text("year");
    student.at_home = studio::parse_at_home(answers->chosen("at_home"));
    student.since = answers->date_or_none("since");
    student.goals = answers->text("goals");
    student.guardian = {answers->text("guardian"), answers->text("phone"), answers->text("e_mail")};
    desk.file().edit(words.say(Sentence::edit_more_student, {{"name", student.name}}),
                     [&](store::Edit& edit) { edit.update(student); });
}

}  // namespace

std::vector<Action> more_actions() {
    return {
        {.id = "student.more",
         .menu = Menu::student,
         .text = "More a&bout this student…",
         .key = "Ctrl+I",
         .edits = true,
         .starts_group = true,
         .may_run = [](const Desk& desk) { return desk.may_write() && desk.student(); },
         .run = more_of_student},
        {.id = "horn.more",
         .menu = Menu::horn,
         .text = "More about this &horn…",
         .key = "Ctrl+Shift+I",
         .edits = true,
         .starts_group = true,
         .may_run = [](const Desk& desk) { return desk.may_write() && desk.horn(); },
         .run = more_of_horn},
    };
}

}  // namespace lowledger::desk
