#include "app/desk/action.h"
#include "app/desk/desk.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

bool has_answer(const Desk& desk) {
    return desk.answer().there();
}

bool at_students(const Desk& desk) {
    return desk.view().place == Place::students;
}

void show_beside(Desk& desk, int part) {
    View view = desk.view();
    view.section = Section::settings;
    desk.go(view);
    desk.front().show_beside_settings(part);
}

void remove_sheet(Desk& desk) {
    const auto sheet = desk.entry()->sheet();
    desk.file().edit(desk.words().say(Sentence::edit_remove_sheet),
                     [&](store::Edit& edit) { edit.remove(sheet.id); });
}

}  // namespace

std::vector<Action> sheet_actions() {
    return {
        {.id = "sheet.over_time",
         .menu = Menu::sheet,
         .text = "Sheets &over time",
         .key = "Ctrl+Shift+O",
         .may_run = [](const Desk& desk) { return desk.student() && desk.horn(); },
         .run =
             [](Desk& desk) {
                 View view = desk.view();
                 view.place = Place::students;
                 view.section = Section::history;
                 view.over_time = true;
                 desk.go(view);
                 desk.front().show_section();
             }},
        {.id = "sheet.new",
         .menu = Menu::sheet,
         .text = "&New tuning sheet",
         .key = "Ctrl+T",
         .may_run = [](const Desk& desk) { return desk.may_write() && desk.entry(); },
         .run =
             [](Desk& desk) {
                 desk.show_sheet(std::nullopt);
                 View view = desk.view();
                 view.section = Section::sheet;
                 desk.go(view);
             }},
        {.id = "sheet.more",
         .menu = Menu::sheet,
         .text = "&More notes of the range",
         .key = "Ctrl+R",
         .may_run = [](const Desk& desk) { return desk.entry() != nullptr; },
         .run = [](Desk& desk) { desk.show_more_notes(!desk.entry()->more_notes()); },
         .full_text =
             [](const Desk& desk) {
                 const bool more = desk.entry() != nullptr && desk.entry()->more_notes();
                 return std::string(more ? "Only the tuning &notes" : "&More notes of the range");
             }},
        {.id = "sheet.remove",
         .menu = Menu::sheet,
         .text = "Remo&ve this sheet",
         .edits = true,
         .may_run =
             [](const Desk& desk) {
                 return desk.may_write() && desk.entry() && desk.entry()->sheet().id.filed();
             },
         .run = remove_sheet},
        {.id = "settings.moved",
         .menu = Menu::sheet,
         .text = "Slides move&d",
         .key = "Ctrl+D",
         .edits = true,
         .starts_group = true,
         .may_run = [](const Desk& desk) { return desk.may_write() && desk.answer().something_moves(); },
         .run = [](Desk& desk) { desk.slides_moved(); }},
        {.id = "settings.hand",
         .menu = Menu::sheet,
         .text = "&Your hand on the settings",
         .key = "Ctrl+E",
         .may_run = has_answer,
         .run = [](Desk& desk) { show_beside(desk, 1); },
         .shown = at_students},
        {.id = "settings.basis",
         .menu = Menu::sheet,
         .text = "What they &rest on",
         .key = "Ctrl+B",
         .may_run = has_answer,
         .run = [](Desk& desk) { show_beside(desk, 2); },
         .shown = at_students},
    };
}

}  // namespace lowledger::desk
