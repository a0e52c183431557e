#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/finding.h"
#include "app/desk/places.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

bool always(const Desk& /*desk*/) {
    return true;
}

bool has_studio(const Desk& desk) {
    return desk.has_studio();
}

bool may_write(const Desk& desk) {
    return desk.may_write();
}

void new_studio(Desk& desk) {
    NewStudio start{desk.data_folder() / "studio.lowledger", {}};
    start.facts.name = desk.words().say(Sentence::studio_name_to_begin_with);
    if (const auto wanted = desk.front().ask_new_studio(start)) desk.create(*wanted);
}

void open_studio(Desk& desk) {
    if (const auto path = desk.front().ask_studio_to_open()) desk.open(*path);
}

void change_facts(Desk& desk) {
    const auto facts = desk.front().ask_facts(desk.file().facts());
    if (!facts) return;
    desk.file().edit(desk.words().say(Sentence::edit_facts), [&](store::Edit& edit) { edit.update(*facts); });
}

void copy_studio(Desk& desk) {
    const auto here = desk.file().path();
    const auto start =
        here.parent_path() / (here.stem().string() + "-" + desk.today().iso() + here.extension().string());
    const auto path = desk.front().ask_where_to_copy(start);
    if (!path) return;
    desk.file().copy_to(*path);
    desk.front().say(desk.words().say(Sentence::copy_is_at, {{"file", path->string()}}));
}

void go_to_what_is_found(Desk& desk) {
    if (const auto found = desk.front().ask_what_to_find()) open_found(desk, *found);
}

std::string with_name(std::string_view verb, const std::optional<std::string>& name) {
    return name ? std::string(verb) + ": " + *name : std::string(verb);
}

/// The n-th of the studios opened last that is not the open one.
std::optional<std::filesystem::path> other_recent(const Desk& desk, std::size_t n) {
    for (const auto& studio : desk.recent()) {
        if (desk.has_studio() && studio == std::filesystem::absolute(desk.file().path())) continue;
        if (n-- == 0) return studio;
    }
    return std::nullopt;
}

Action recent_action(std::string_view id, std::size_t n) {
    return {.id = id,
            .menu = Menu::studio,
            .text = "A studio opened before",
            .starts_group = n == 0,
            .may_run = always,
            .run = [n](Desk& desk) { desk.open(other_recent(desk, n).value()); },
            .shown = [n](const Desk& desk) { return other_recent(desk, n).has_value(); },
            .full_text =
                [n](const Desk& desk) {
                    const auto studio = other_recent(desk, n);
                    std::string name = studio ? studio->stem().string() : std::string();
                    for (auto at = name.find('&'); at != std::string::npos; at = name.find('&', at + 2))
                        name.insert(at, "&");
                    return "&" + std::to_string(n + 1) + " " + name;
                }};
}

std::vector<Action> recent_actions() {
    return {recent_action("studio.recent.1", 0), recent_action("studio.recent.2", 1),
            recent_action("studio.recent.3", 2), recent_action("studio.recent.4", 3),
            recent_action("studio.recent.5", 4)};
}

std::vector<Action> file_actions() {
    return {
        {.id = "studio.new",
         .menu = Menu::studio,
         .text = "&New studio…",
         .key = "Ctrl+Shift+N",
         .may_run = always,
         .run = new_studio},
        {.id = "studio.open",
         .menu = Menu::studio,
         .text = "&Open studio…",
         .key = "Ctrl+O",
         .may_run = always,
         .run = open_studio},
        {.id = "studio.sample",
         .menu = Menu::studio,
         .text = "Look at the s&ample",
         .may_run = always,
         .run = [](Desk& desk) { desk.open_sample(); }},
        {.id = "studio.facts",
         .menu = Menu::studio,
         .text = "About this &studio…",
         .edits = true,
         .starts_group = true,
         .may_run = may_write,
         .run = change_facts},
        {.id = "studio.copy",
         .menu = Menu::studio,
         .text = "Save a &copy…",
         .may_run = has_studio,
         .run = copy_studio},
    };
}

}  // namespace

std::vector<Action> studio_actions() {
    std::vector<Action> all = file_actions();
    std::ranges::move(recent_actions(), std::back_inserter(all));
    all.push_back({.id = "studio.close",
                   .menu = Menu::studio,
                   .text = "&Quit",
                   .key = "Ctrl+Q",
                   .starts_group = true,
                   .may_run = always,
                   .run = [](Desk& desk) { desk.front().close(); }});
    return all;
}

std::vector<Action> edit_actions() {
    return {
        {.id = "edit.undo",
         .menu = Menu::edit,
         .text = "&Undo",
         .key = "Ctrl+Z",
         .may_run = [](const Desk& desk) { return desk.may_write() && desk.file().undo_name(); },
         .run = [](Desk& desk) { desk.file().undo(); },
         .full_text =
             [](const Desk& desk) {
                 return with_name("&Undo", desk.has_studio() ? desk.file().undo_name() : std::nullopt);
             }},
        {.id = "edit.redo",
         .menu = Menu::edit,
         .text = "&Redo",
         .key = "Ctrl+Shift+Z",
         .may_run = [](const Desk& desk) { return desk.may_write() && desk.file().redo_name(); },
         .run = [](Desk& desk) { desk.file().redo(); },
         .full_text =
             [](const Desk& desk) {
                 return with_name("&Redo", desk.has_studio() ? desk.file().redo_name() : std::nullopt);
             }},
        {.id = "edit.find",
         .menu = Menu::edit,
         .text = "&Find",
         .key = "Ctrl+F",
         .starts_group = true,
         .may_run = has_studio,
         .run =
             [](Desk& desk) {
                 if (entry_of(desk.view().place).list)
                     desk.front().show_find_field();
                 else
                     go_to_what_is_found(desk);
             }},
        {.id = "edit.find_anything",
         .menu = Menu::edit,
         .text = "Find &anything…",
         .key = "Ctrl+Shift+F",
         .may_run = has_studio,
         .run = go_to_what_is_found},
    };
}

}  // namespace lowledger::desk
