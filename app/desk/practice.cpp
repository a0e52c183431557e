#include "app/desk/practice.h"

#include <algorithm>
#include <chrono>
#include <string>

#include "app/desk/desk.h"
#include "app/desk/practice_week.h"
#include "app/desk/routine_give.h"
#include "app/desk/routine_lists.h"
#include "model/studio/questions.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

constexpr int minutes_of_a_day = 1440;
constexpr int weeks_shown = 8;
/// The key of practice that belongs to no routine.
constexpr std::string_view something_else = "0";

bool has_student(const Desk& desk) {
    return desk.may_write() && desk.student();
}

int chosen_week(const Desk& desk) {
    return static_cast<int>(
        std::clamp<std::int64_t>(desk.chosen(Table::practice).value_or(0), 0, weeks_shown - 1));
}

void tick_week(Desk& desk) {
    const auto& words = desk.words();
    const auto week = practice_week(desk.file(), desk.student()->id, desk.today(), chosen_week(desk));
    if (week.given.empty() && week.entries.empty())
        throw units::Refusal(
            words.say(Sentence::week_has_nothing, {{"date", words::date_text(words, week.first)}}));
    const auto answers = desk.front().ask(week_slip(week, desk.file(), words));
    if (!answers) return;
    desk.file().edit(words.say(Sentence::edit_practice, {{"name", studio::called(*desk.student())}}),
                     [&](store::Edit& edit) { take_week(edit, week, *answers); });
}

std::vector<SlipChoice> practised_choices(const Desk& desk) {
    std::vector<SlipChoice> choices;
    for (const auto& given : given_to_student(desk))
        choices.push_back({std::to_string(given.id.number), desk.file().routine(given.routine)->title});
    choices.push_back({std::string(something_else), desk.words().say(Sentence::something_else)});
    return choices;
}

/// What is entered again for a routine and a day takes the old one's place.
void file_entry(Desk& desk, studio::PracticeEntry entry) {
    for (const auto& there : desk.file().practice(entry.student, entry.on, entry.on))
        if (entry.assignment && there.assignment == entry.assignment) entry.id = there.id;
    desk.file().edit(desk.words().say(Sentence::edit_practice, {{"name", studio::called(*desk.student())}}),
                     [&](store::Edit& edit) {
                         if (entry.id.filed())
                             edit.update(entry);
                         else
                             edit.add(entry);
                     });
}

void enter_practice(Desk& desk) {
    const auto& words = desk.words();
    const auto selected = given_selected(desk);
    Slip slip(words.say(Sentence::slip_practice), words.say(Sentence::verb_enter));
    slip.choice("given", words.say(Sentence::label_given), practised_choices(desk),
                selected ? std::to_string(selected->id.number) : std::string(something_else))
        .date("on", words.say(Sentence::label_on), desk.today())
        .text("minutes", words.say(Sentence::label_minutes), {}, words.say(Sentence::hint_minutes))
        .text("remarks", words.say(Sentence::label_remarks), {})
        .must(minutes_check(words, minutes_of_a_day));
    const auto answers = desk.front().ask(slip);
    if (!answers) return;
    studio::PracticeEntry entry{.id = {}, .student = desk.student()->id, .on = answers->date("on")};
    if (answers->chosen("given") != something_else)
        entry.assignment = studio::AssignmentId{std::stoll(answers->chosen("given"))};
    entry.length = minutes_in(*answers);
    entry.remarks = answers->text("remarks");
    file_entry(desk, entry);
}

}  // namespace

Listing practice_listing(const Desk& desk) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {{words.say(Sentence::column_week), false, true},
                       {words.say(Sentence::column_practised), true},
                       {words.say(Sentence::column_minutes), true}};
    if (!desk.student()) return listing;
    for (int ago = 0; ago < weeks_shown; ++ago) {
        const auto week = practice_week(desk.file(), desk.student()->id, desk.today(), ago);
        std::chrono::minutes length{};
        for (const auto& entry : week.entries)
            length += entry.length.value_or(std::chrono::minutes());
        const int done = days_practised(week);
        const int due = days_due(week, desk.file());
        listing.rows.push_back({ago,
                                {{words::date_text(words, week.first), week.first},
                                 {words.say(Sentence::practised_of,
                                            {{"done", std::to_string(done)}, {"due", std::to_string(due)}}),
                                  static_cast<double>(done)},
                                 {length.count() == 0 ? std::string() : std::to_string(length.count()),
                                  static_cast<double>(length.count())}},
                                done == 0 && due == 0});
    }
    // Weeks before anything was given or entered tell nothing.
    while (!listing.rows.empty() && listing.rows.back().faint)
        listing.rows.pop_back();
    return listing;
}

std::vector<Action> practice_actions() {
    return {{.id = "practice.week",
             .menu = Menu::routine,
             .text = "&Tick week…",
             .key = "Ctrl+Shift+E",
             .edits = true,
             .starts_group = true,
             .may_run = has_student,
             .run = tick_week},
            {.id = "practice.enter",
             .menu = Menu::routine,
             .text = "&Enter practice…",
             .edits = true,
             .may_run = has_student,
             .run = enter_practice}};
}

}  // namespace lowledger::desk
