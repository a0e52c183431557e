#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/whom.h"
#include "app/paper/lists.h"
#include "reports/pages/handout.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

bool has_studio(const Desk& desk) {
    return desk.has_studio();
}

Slip slip_for(const Desk& desk, Sentence title) {
    return {desk.words().say(title), desk.words().say(Sentence::print_show)};
}

/// The slip filled in, after it was asked about large print too.
std::optional<SlipAnswers> asked(Desk& desk, Slip slip) {
    slip.check("large", desk.words().say(Sentence::print_large), false);
    return desk.front().ask(slip);
}

paper::Gathering gathering(const Desk& desk, const SlipAnswers& answers) {
    const auto facts = desk.file().facts();
    return {.file = desk.file(),
            .facts = facts,
            .day = desk.today(),
            .style = {.paper = pages::paper_of(facts), .large_print = answers.checked("large")}};
}

void show(Desk& desk, canvas::Document document, Sentence title, studio::Date day) {
    desk.front().show_document(std::move(document), desk.words().say(title) + " " + day.iso(), [] {});
}

void print_class(Desk& desk) {
    Slip slip = slip_for(desk, Sentence::class_list_title);
    ask_whom(slip, desk, false, Sentence::print_for_everybody);
    const auto answers = asked(desk, std::move(slip));
    if (!answers) return;
    const auto list = paper::class_list(gathering(desk, *answers), students_chosen(desk, *answers),
                                        group_chosen(desk, *answers));
    show(desk, pages::class_list(list, desk.words(), desk.front().faces()), Sentence::class_list_title,
         desk.today());
}

void print_day(Desk& desk) {
    Slip slip = slip_for(desk, Sentence::day_list_of_a_day);
    slip.date("day", desk.words().say(Sentence::print_day), desk.today());
    const auto answers = asked(desk, std::move(slip));
    if (!answers) return;
    auto from = gathering(desk, *answers);
    from.day = answers->date("day");
    show(desk, pages::day_list(paper::day_list(from), desk.words(), desk.front().faces()),
         Sentence::day_list_of_a_day, from.day);
}

void print_inventory(Desk& desk) {
    const auto answers = asked(desk, slip_for(desk, Sentence::inventory_title));
    if (!answers) return;
    show(desk,
         pages::inventory(paper::inventory(gathering(desk, *answers)), desk.words(), desk.front().faces()),
         Sentence::inventory_title, desk.today());
}

void print_repairs(Desk& desk) {
    const auto answers = asked(desk, slip_for(desk, Sentence::repairs_title));
    if (!answers) return;
    show(
        desk,
        pages::repair_list(paper::repair_list(gathering(desk, *answers)), desk.words(), desk.front().faces()),
        Sentence::repairs_title, desk.today());
}

}  // namespace

std::vector<Action> book_print_actions() {
    return {
        {.id = "print.day",
         .menu = Menu::print,
         .text = "Lessons of a &day…",
         .starts_group = true,
         .may_run = has_studio,
         .run = print_day},
        {.id = "print.class",
         .menu = Menu::print,
         .text = "Cl&ass list…",
         .may_run = has_studio,
         .run = print_class},
        {.id = "print.inventory",
         .menu = Menu::print,
         .text = "In&ventory…",
         .starts_group = true,
         .may_run = has_studio,
         .run = print_inventory},
        {.id = "print.repairs",
         .menu = Menu::print,
         .text = "&Repair list…",
         .may_run = has_studio,
         .run = print_repairs},
    };
}

}  // namespace lowledger::desk
