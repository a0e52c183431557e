#include "app/desk/action.h"
#include "app/desk/desk.h"

namespace lowledger::desk {
namespace {

Action place_action(std::string_view id, std::string_view text, std::string_view key, Place place) {
    return {.id = id,
            .menu = Menu::go,
            .text = text,
            .key = key,
            .may_run = [](const Desk& desk) { return desk.has_studio(); },
            .run =
                [place](Desk& desk) {
                    View view = desk.view();
                    view.place = place;
                    if (place == Place::students) view.horn = std::nullopt;
                    desk.go(view);
                }};
}

Action section_action(std::string_view id, int section, std::string_view key, std::string_view of_student,
                      std::string_view of_horn) {
    return {.id = id,
            .menu = Menu::go,
            .text = of_student,
            .key = key,
            .starts_group = section == 0,
            .may_run = [](const Desk& desk) { return desk.student() || desk.horn(); },
            .run =
                [section](Desk& desk) {
                    View view = desk.view();
                    view.section = section;
                    desk.go(view);
                    desk.front().show_section();
                },
            .full_text =
                [of_student, of_horn](const Desk& desk) {
                    return std::string(desk.view().place == Place::students ? of_student : of_horn);
                }};
}

}  // namespace

std::vector<Action> go_actions() {
    return {
        place_action("go.students", "&Students", "Alt+1", Place::students),
        place_action("go.horns", "&Horns", "Alt+2", Place::horns),
        section_action("go.first", 0, "Ctrl+1", "&Tuning sheet", "H&orn"),
        section_action("go.second", 1, "Ctrl+2", "S&ettings", "S&lides"),
        {.id = "go.back",
         .menu = Menu::go,
         .text = "&Back",
         .key = "Alt+Left",
         .starts_group = true,
         .may_run = [](const Desk& desk) { return desk.can_go_back(); },
         .run = [](Desk& desk) { desk.go_back(); }},
    };
}

}  // namespace lowledger::desk
