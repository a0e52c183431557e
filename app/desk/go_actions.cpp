#include <array>

#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/places.h"
#include "app/desk/term_lists.h"

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
                    view.day.reset();
                    view.lesson.reset();
                    if (place == Place::students) view.horn = std::nullopt;
                    if (place == Place::terms) view.term = term_to_open(desk);
                    desk.go(view);
                }};
}

Action section_action(Place place, const SectionEntry& entry, std::size_t number) {
    constexpr std::array<std::string_view, 8> keys{"Ctrl+1", "Ctrl+2", "Ctrl+3", "Ctrl+4",
                                                   "Ctrl+5", "Ctrl+6", "Ctrl+7", "Ctrl+8"};
    return {.id = entry.go_action,
            .menu = Menu::go,
            .text = entry.text,
            .key = keys.at(number),
            .starts_group = number == 0,
            .may_run = [](const Desk& desk) { return desk.student() || desk.horn() || desk.term(); },
            .run =
                [section = entry.section](Desk& desk) {
                    View view = desk.view();
                    view.section = section;
                    view.over_time = false;
                    desk.go(view);
                    desk.front().show_section();
                },
            .shown = [place](const Desk& desk) { return desk.view().place == place; }};
}

}  // namespace

std::vector<Action> go_actions() {
    std::vector<Action> all;
    for (const auto& entry : places())
        all.push_back(place_action(entry));
    for (const auto& entry : places())
        for (std::size_t i = 0; i < entry.sections.size(); ++i)
            all.push_back(section_action(entry.place, entry.sections[i], i));
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
