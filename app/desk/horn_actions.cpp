#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/places.h"
#include "model/studio/kind_of.h"
#include "model/studio/questions.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

bool shows_chart(const Desk& desk) {
    return desk.view().place == Place::horns && desk.horn() && section_of(desk.view()) == Section::chart;
}

/// A horn's page is open, or a student's with a horn.
bool has_horn(const Desk& desk) {
    return desk.may_write() && desk.horn();
}

bool has_horn_page(const Desk& desk) {
    return has_horn(desk) && desk.view().place == Place::horns;
}

/// Notes where slides stand, those of `positions` alone.
void note_positions(store::Edit& edit, studio::HornId horn, studio::Date on,
                    const std::map<std::string, units::Millimetres>& positions) {
    for (const auto& [slide, position] : positions)
        edit.add(studio::SlidePosition{.id = {},
                                       .horn = horn,
                                       .slide = slide,
                                       .on = on,
                                       .position = position,
                                       .origin = studio::SlidePosition::Origin::measured});
}

void add_horn(Desk& desk) {
    const auto wanted = desk.front().ask_new_horn();
    if (!wanted) return;
    studio::HornId added;
    desk.file().edit(desk.words().say(Sentence::edit_add_horn, {{"mark", wanted->horn.mark}}),
                     [&](store::Edit& edit) {
                         added = edit.add(wanted->horn);
                         note_positions(edit, added, desk.today(), wanted->positions);
                     });
    desk.go({.place = Place::horns, .horn = added});
}

void change_horn(Desk& desk) {
    const auto wanted = desk.front().ask_horn(*desk.horn());
    if (!wanted) return;
    desk.file().edit(desk.words().say(Sentence::edit_change_horn, {{"mark", wanted->mark}}),
                     [&](store::Edit& edit) { edit.update(*wanted); });
}

void measure_slides(Desk& desk) {
    const studio::Horn horn = *desk.horn();
    const auto wanted = desk.front().ask_measured(
        horn, {.on = desk.today(), .positions = desk.file().slide_positions(horn.id, desk.today())});
    if (!wanted) return;
    desk.file().edit(
        desk.words().say(Sentence::edit_measure_slides, {{"mark", horn.mark}}),
        [&](store::Edit& edit) { note_positions(edit, horn.id, wanted->on, wanted->positions); });
}

void archive_horn(Desk& desk) {
    studio::Horn horn = *desk.horn();
    horn.archived = !horn.archived;
    const auto name = horn.archived ? Sentence::edit_archive : Sentence::edit_unarchive;
    desk.file().edit(desk.words().say(name, {{"name", horn.mark}}),
                     [&](store::Edit& edit) { edit.update(horn); });
}

void remove_horn(Desk& desk) {
    const studio::Horn horn = *desk.horn();
    const auto sheets = static_cast<int>(desk.file().sheets(horn.id).size());
    const auto question = desk.words().say_counted(Sentence::ask_remove_horn_one_sheet,
                                                   Sentence::ask_remove_horn, sheets, {{"mark", horn.mark}});
    if (!desk.front().confirm(question, desk.words().say(Sentence::verb_remove))) return;
    desk.file().edit(desk.words().say(Sentence::edit_remove, {{"name", horn.mark}}),
                     [&](store::Edit& edit) { edit.remove(horn.id); });
}

}  // namespace

std::vector<Action> horn_actions() {
    return {
        {.id = "horn.add",
         .menu = Menu::horn,
         .text = "&Add horn…",
         .key = "Ctrl+Shift+H",
         .edits = true,
         .may_run = [](const Desk& desk) { return desk.may_write(); },
         .run = add_horn},
        {.id = "horn.change",
         .menu = Menu::horn,
         .text = "&Change horn…",
         .key = "Shift+F2",
         .edits = true,
         .may_run = has_horn,
         .run = change_horn},
        {.id = "horn.measure",
         .menu = Menu::horn,
         .text = "&Measure slides…",
         .key = "Ctrl+M",
         .edits = true,
         .starts_group = true,
         .may_run = has_horn,
         .run = measure_slides},
        {.id = "chart.table",
         .menu = Menu::horn,
         .text = "Chart as a &table",
         .key = "Ctrl+L",
         .starts_group = true,
         .may_run = shows_chart,
         .run = [](Desk& desk) { desk.show_chart_as_table(!desk.chart_as_table()); },
         .full_text =
             [](const Desk& desk) {
                 return std::string(desk.chart_as_table() ? "Chart on &staves" : "Chart as a &table");
             }},
        {.id = "chart.kind",
         .menu = Menu::horn,
         .text = "Chart of a &kind…",
         .key = "Ctrl+K",
         .may_run = [](const Desk& /*desk*/) { return true; },
         .run = [](Desk& desk) { desk.front().show_kind_charts(); }},
        {.id = "horn.archive",
         .menu = Menu::horn,
         .text = "A&rchive horn",
         .edits = true,
         .starts_group = true,
         .may_run = has_horn_page,
         .run = archive_horn,
         .full_text =
             [](const Desk& desk) {
                 const bool archived = desk.horn() && desk.horn()->archived;
                 return std::string(archived ? "Take out of the a&rchive" : "A&rchive horn");
             }},
        {.id = "horn.remove",
         .menu = Menu::horn,
         .text = "Remo&ve horn…",
         .edits = true,
         .may_run = has_horn_page,
         .run = remove_horn},
    };
}

}  // namespace lowledger::desk
