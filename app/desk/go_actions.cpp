#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/places.h"

namespace lowledger::desk {
namespace {

Action place_action(const PlaceEntry& entry) {
    return {.id = entry.go_action,
            .menu = Menu::go,
            .text = entry.text,
            .key = entry.key,
            .may_run = [](const Desk& desk) { return desk.has_studio(); },
            .run =
                [place = entry.place](Desk& desk) {
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
    std::vector<Action> all;
    for (const auto& entry : places())
        all.push_back(place_action(entry));
    all.push_back(section_action("go.first", 0, "Ctrl+1", "&Tuning sheet", "H&orn"));
    all.push_back(section_action("go.second", 1, "Ctrl+2", "S&ettings", "S&lides"));
    all.push_back({.id = "go.back",
                   .menu = Menu::go,
                   .text = "&Back",
                   .key = "Alt+Left",
                   .starts_group = true,
                   .may_run = [](const Desk& desk) { return desk.can_go_back(); },
                   .run = [](Desk& desk) { desk.go_back(); }});
    return all;
}

}  // namespace lowledger::desk
