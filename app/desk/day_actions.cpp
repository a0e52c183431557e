#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/lesson_slips.h"

namespace lowledger::desk {
namespace {

bool at_today(const Desk& desk) {
    return desk.view().place == Place::today;
}

studio::Date day_shown(const Desk& desk) {
    return desk.view().day.value_or(desk.today());
}

void turn_to(Desk& desk, studio::Date day) {
    View view = desk.view();
    view.place = Place::today;
    view.day = day;
    if (day == desk.today()) view.day.reset();
    view.lesson.reset();
    desk.go(view);
}

}  // namespace

std::vector<Action> day_actions() {
    return {
        {.id = "day.before",
         .menu = Menu::go,
         .text = "Day be&fore",
         .key = "Alt+PageUp",
         .starts_group = true,
         .may_run = [](const Desk& desk) { return desk.has_studio(); },
         .run = [](Desk& desk) { turn_to(desk, day_shown(desk) - 1); },
         .shown = at_today},
        {.id = "day.after",
         .menu = Menu::go,
         .text = "Day &after",
         .key = "Alt+PageDown",
         .may_run = [](const Desk& desk) { return desk.has_studio(); },
         .run = [](Desk& desk) { turn_to(desk, day_shown(desk) + 1); },
         .shown = at_today},
        {.id = "day.choose",
         .menu = Menu::go,
         .text = "&Go to a day…",
         .key = "Ctrl+G",
         .may_run = [](const Desk& desk) { return desk.has_studio(); },
         .run =
             [](Desk& desk) {
                 if (const auto day = ask_day(desk, day_shown(desk))) turn_to(desk, *day);
             }},
    };
}

}  // namespace lowledger::desk
