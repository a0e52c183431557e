#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/manual.h"

namespace lowledger::desk {

std::vector<Action> help_actions() {
    return {
        {.id = "help.manual",
         .menu = Menu::help,
         .text = "&Manual",
         .key = "F1",
         .may_run = [](const Desk& /*desk*/) { return true; },
         .run = [](Desk& desk) { desk.front().show_manual(manual_title_for(desk)); }},
        {.id = "help.keys",
         .menu = Menu::help,
         .text = "&Keys",
         .key = "Shift+F1",
         .may_run = [](const Desk& /*desk*/) { return true; },
         .run = [](Desk& desk) { desk.front().show_manual(manual().back().title); }},
    };
}

}  // namespace lowledger::desk
