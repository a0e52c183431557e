#include "app/desk/routine_give.h"

#include <algorithm>
#include <charconv>

#include "app/desk/desk.h"
#include "app/desk/places.h"
#include "app/desk/routine_lists.h"
#include "model/studio/assigned.h"
#include "model/studio/calendar.h"
#include "model/studio/questions.h"
#include "reports/words/routine_words.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

constexpr int usual_days = 7;
constexpr char student_key = 's';
constexpr char group_key = 'g';

std::optional<int> whole_number(const std::string& text) {
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
    return value;
}

bool has_student(const Desk& desk) {
    return desk.may_write() && desk.student();
}

bool has_given(const Desk& desk) {
    return has_student(desk) && given_selected(desk);
}

std::string title_of(const Desk& desk, studio::RoutineId id) {
    return desk.file().routine(id)->title;
}

std::vector<SlipChoice> day_choices(const words::Words& words) {
    std::vector<SlipChoice> days;
    for (int day = 1; day <= 7; ++day)
        days.push_back({std::to_string(day), words::weekday_short(words, day)});
    return days;
}

std::vector<std::string> day_keys(studio::Weekdays days) {
    std::vector<std::string> keys;
    for (int day = 1; day <= 7; ++day)
        if (days.has(day)) keys.push_back(std::to_string(day));
    return keys;
}

studio::Weekdays days_in(const SlipAnswers& answers) {
    int bits = 0;
    for (const auto& day : answers.several("days"))
        bits |= 1 << (day.front() - '1');
    return studio::Weekdays::from_bits(bits);
}

/// Fields that giving and changing have in common.
void add_terms(Slip& slip, const words::Words& words, const studio::Assignment& start) {
    slip.text("amount", words.say(Sentence::label_dose), start.amount, words.say(Sentence::hint_amount))
        .date("from", words.say(Sentence::label_from), start.from)
        .date_or_none("until", words.say(Sentence::label_until), start.until)
        .boxes("days", words.say(Sentence::label_days), day_choices(words), day_keys(start.days))
        .text("remarks", words.say(Sentence::label_remarks), start.remarks)
        .needs("days", words.say(Sentence::needs_days))
        .must([late = words.say(Sentence::until_after_from)](
                  const SlipAnswers& answers) -> std::optional<SlipProblem> {
            const auto until = answers.date_or_none("until");
            if (until && *until <= answers.date("from")) return SlipProblem{"until", late};
            return std::nullopt;
        });
}

void take_terms(studio::Assignment& given, const SlipAnswers& answers) {
    given.amount = answers.text("amount");
    given.from = answers.date("from");
    given.until = answers.date_or_none("until");
    given.days = days_in(answers);
    given.remarks = answers.text("remarks");
}

/// Fitting ones first; archived ones are not offered.
std::vector<SlipChoice> routine_choices(const Desk& desk) {
    std::vector<studio::Routine> routines = desk.file().routines();
    std::erase_if(routines, [](const auto& routine) { return routine.archived; });
    if (desk.student())
        std::stable_partition(routines.begin(), routines.end(), [&](const auto& routine) {
            return studio::is_for(routine, desk.student()->level) &&
                   (!desk.horn() || studio::is_for(routine, desk.kind()));
        });
    std::vector<SlipChoice> choices;
    choices.reserve(routines.size());
    for (const auto& routine : routines)
        choices.push_back({std::to_string(routine.id.number), routine.title});
    return choices;
}

std::vector<SlipChoice> receiver_choices(const Desk& desk) {
    std::vector<SlipChoice> choices;
    for (const auto& student : desk.file().students())
        if (!student.archived)
            choices.push_back({student_key + std::to_string(student.id.number), student.name});
    for (const auto& group : desk.file().groups())
        if (!group.archived) choices.push_back({group_key + std::to_string(group.id.number), group.name});
    return choices;
}

bool may_give(const Desk& desk) {
    if (!desk.may_write()) return false;
    if (desk.view().place == Place::horns) return false;
    return !routine_choices(desk).empty() && !receiver_choices(desk).empty();
}

void give(Desk& desk) {
    const auto& words = desk.words();
    const auto routines = routine_choices(desk);
    const auto receivers = receiver_choices(desk);
    const auto routine = desk.view().routine && desk.view().place == Place::routines
                             ? std::to_string(desk.view().routine->number)
                             : std::string();
    const auto student =
        desk.student() ? student_key + std::to_string(desk.student()->id.number) : std::string();
    studio::Assignment given{
        .id = {}, .routine = {}, .from = desk.today(), .until = desk.today() + usual_days};
    Slip slip(words.say(Sentence::slip_give), words.say(Sentence::verb_give));
    slip.choice("routine", words.say(Sentence::label_routine), routines, routine)
        .choice("to", words.say(Sentence::label_to), receivers, student);
    add_terms(slip, words, given);
    const auto answers = desk.front().ask(slip);
    if (!answers) return;
    take_terms(given, *answers);
    given.routine = studio::RoutineId{std::stoll(answers->chosen("routine"))};
    const std::string to = answers->chosen("to");
    if (to.front() == group_key)
        given.group = studio::GroupId{std::stoll(to.substr(1))};
    else
        given.student = studio::StudentId{std::stoll(to.substr(1))};
    const auto name = std::ranges::find(receivers, to, &SlipChoice::key)->text;
    const auto title = title_of(desk, given.routine);
    desk.file().edit(words.say(Sentence::edit_give, {{"title", title}, {"name", name}}),
                     [&](store::Edit& edit) { edit.add(given); });
}

void renew(Desk& desk) {
    auto old = *given_selected(desk);
    const auto title = title_of(desk, old.routine);
    const auto next = studio::renewed_for_as_long(old, desk.today());
    if (!next)
        throw units::Refusal(desk.words().say(
            old.until ? Sentence::renew_only_begins : Sentence::renew_has_no_end, {{"title", title}}));
    studio::AssignmentId added;
    desk.file().edit(desk.words().say(Sentence::edit_renew, {{"title", title}}), [&](store::Edit& edit) {
        edit.update(old);
        added = edit.add(*next);
    });
    desk.choose(Table::given, added.number);
}

/// One that was already practised under its old terms ends today; another is put right in place.
void change_given(Desk& desk) {
    const auto& words = desk.words();
    auto old = *given_selected(desk);
    const auto title = title_of(desk, old.routine);
    auto start = old;
    const bool runs = old.from < desk.today();
    if (runs) start.from = desk.today();
    if (start.until && *start.until <= start.from) start.until = start.from + usual_days;
    Slip slip(words.say(Sentence::slip_change_given), words.say(Sentence::verb_change));
    slip.note(title);
    add_terms(slip, words, start);
    const auto answers = desk.front().ask(slip);
    if (!answers) return;
    auto changed = start;
    take_terms(changed, *answers);
    desk.file().edit(words.say(Sentence::edit_change_given, {{"title", title}}), [&](store::Edit& edit) {
        if (!runs) return edit.update(changed);
        auto next = studio::renewed(old, changed.from, changed.until);
        take_terms(next, *answers);
        old.end = studio::Assignment::End::changed;
        edit.update(old);
        edit.add(next);
    });
}

void stop_given(Desk& desk) {
    auto given = *given_selected(desk);
    studio::stop(given, desk.today());
    desk.file().edit(desk.words().say(Sentence::edit_stop, {{"title", title_of(desk, given.routine)}}),
                     [&](store::Edit& edit) { edit.update(given); });
}

}  // namespace

Slip::Check minutes_check(const words::Words& words, int most) {
    return [most, sentence = words.say(Sentence::needs_minutes, {{"most", std::to_string(most)}})](
               const SlipAnswers& answers) -> std::optional<SlipProblem> {
        if (answers.empty("minutes")) return std::nullopt;
        const auto minutes = whole_number(answers.text("minutes"));
        if (minutes && *minutes >= 1 && *minutes <= most) return std::nullopt;
        return SlipProblem{"minutes", sentence};
    };
}

std::optional<std::chrono::minutes> minutes_in(const SlipAnswers& answers) {
    const auto minutes = whole_number(answers.text("minutes"));
    if (!minutes) return std::nullopt;
    return std::chrono::minutes(*minutes);
}

std::vector<Action> given_actions() {
    const auto action = [](std::string_view id, std::string_view text, std::string_view key, auto may_run,
                           auto run) {
        return Action{.id = id,
                      .menu = Menu::routine,
                      .text = text,
                      .key = key,
                      .edits = true,
                      .may_run = may_run,
                      .run = run};
    };
    std::vector<Action> all = {
        action("routine.give", "&Give routine…", "Ctrl+Shift+A", may_give, give),
        action("routine.renew", "Re&new", "Ctrl+Shift+R", has_given, renew),
        action("routine.change_given", "Change &what is given…", "", has_given, change_given),
        action("routine.stop", "&Stop", "", has_given, stop_given)};
    all.front().starts_group = true;
    return all;
}

}  // namespace lowledger::desk
