#include <algorithm>
#include <charconv>

#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/places.h"
#include "app/desk/practice.h"
#include "app/desk/routine_give.h"
#include "app/desk/routine_lists.h"
#include "reports/engraving/music_text.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

constexpr int longest_minutes = 600;

std::string by_lines(const std::vector<std::string>& lines) {
    std::string text;
    for (const auto& line : lines)
        text += (text.empty() ? "" : "\n") + line;
    return text;
}

/// What stands between the parting characters, without blanks at the ends and empty ones.
std::vector<std::string> parted(const std::string& text, char at) {
    std::vector<std::string> parts;
    for (std::size_t begin = 0; begin <= text.size();) {
        const auto end = std::min(text.find(at, begin), text.size());
        const auto first = text.find_first_not_of(" \t\r", begin);
        if (first < end) {
            const auto last = text.find_last_not_of(" \t\r", end - 1);
            parts.push_back(text.substr(first, last - first + 1));
        }
        begin = end + 1;
    }
    return parts;
}

std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (const auto& part : parts)
        text += (text.empty() ? "" : ", ") + part;
    return text;
}

std::vector<SlipChoice> level_choices(const words::Words& words) {
    return {{"0", words.say(Sentence::level_beginner)},
            {"1", words.say(Sentence::level_middle)},
            {"2", words.say(Sentence::level_advanced)}};
}

/// Music that can be read, or none.
std::optional<SlipProblem> music_problem(const SlipAnswers& answers) {
    if (answers.empty("music")) return std::nullopt;
    try {
        engraving::parse_music(answers.text("music"));
    } catch (const units::Refusal& refusal) {
        return SlipProblem{"music", refusal.what()};
    }
    return std::nullopt;
}

std::optional<studio::Routine> ask_routine(Desk& desk, studio::Routine routine, Sentence title,
                                           Sentence verb) {
    const auto& words = desk.words();
    std::vector<std::string> levels;
    for (const auto level : routine.levels)
        levels.push_back(std::to_string(static_cast<int>(level)));
    Slip slip(words.say(title), words.say(verb));
    slip.text("title", words.say(Sentence::label_title), routine.title)
        .text("aim", words.say(Sentence::label_aim), routine.aim)
        .lines("steps", words.say(Sentence::label_steps), by_lines(routine.steps))
        .text("dose", words.say(Sentence::label_dose), routine.dose)
        .text("minutes", words.say(Sentence::label_minutes),
              routine.length ? std::to_string(routine.length->count()) : std::string(),
              words.say(Sentence::hint_minutes))
        .boxes("levels", words.say(Sentence::label_levels), level_choices(words), levels)
        .text("horns", words.say(Sentence::label_horns), joined(routine.horns),
              words.say(Sentence::hint_horns))
        .text("music", words.say(Sentence::label_music), routine.music, words.say(Sentence::hint_music))
        .lines("remarks", words.say(Sentence::label_remarks), routine.remarks)
        .needs("title", words.say(Sentence::needs_title))
        .must(minutes_check(words, longest_minutes))
        .must(music_problem);
    const auto answers = desk.front().ask(slip);
    if (!answers) return std::nullopt;
    routine.title = answers->text("title");
    routine.aim = answers->text("aim");
    routine.steps = parted(answers->text("steps"), '\n');
    routine.dose = answers->text("dose");
    routine.length = minutes_in(*answers);
    routine.levels.clear();
    for (const auto& level : answers->several("levels"))
        routine.levels.push_back(static_cast<studio::Level>(level.front() - '0'));
    routine.horns = parted(answers->text("horns"), ',');
    routine.music = answers->text("music");
    routine.remarks = answers->text("remarks");
    return routine;
}

std::optional<studio::Routine> open_routine(const Desk& desk) {
    if (!desk.has_studio() || desk.view().place != Place::routines || !desk.view().routine)
        return std::nullopt;
    return desk.file().routine(*desk.view().routine);
}

bool may_change(const Desk& desk) {
    return desk.may_write() && open_routine(desk);
}

void add_and_open(Desk& desk, const studio::Routine& routine) {
    studio::RoutineId added;
    desk.file().edit(desk.words().say(Sentence::edit_add_routine, {{"title", routine.title}}),
                     [&](store::Edit& edit) { added = edit.add(routine); });
    View view = desk.view();
    view.place = Place::routines;
    view.routine = added;
    desk.go(view);
}

void add_routine(Desk& desk) {
    const auto routine =
        ask_routine(desk, {.id = {}, .title = {}}, Sentence::slip_routine_add, Sentence::verb_add);
    if (routine) add_and_open(desk, *routine);
}

void change_routine(Desk& desk) {
    const auto routine =
        ask_routine(desk, *open_routine(desk), Sentence::slip_routine_change, Sentence::verb_change);
    if (!routine) return;
    desk.file().edit(desk.words().say(Sentence::edit_change_routine, {{"title", routine->title}}),
                     [&](store::Edit& edit) { edit.update(*routine); });
}

void copy_routine(Desk& desk) {
    auto routine = *open_routine(desk);
    routine.key.clear();
    routine.archived = false;
    routine.title = desk.words().say(Sentence::copy_of, {{"title", routine.title}});
    add_and_open(desk, routine);
}

void archive_routine(Desk& desk) {
    auto routine = *open_routine(desk);
    routine.archived = !routine.archived;
    const auto name = routine.archived ? Sentence::edit_archive : Sentence::edit_unarchive;
    desk.file().edit(desk.words().say(name, {{"name", routine.title}}),
                     [&](store::Edit& edit) { edit.update(routine); });
}

void remove_routine(Desk& desk) {
    const auto routine = *open_routine(desk);
    const auto question = desk.words().say(Sentence::ask_remove_routine, {{"title", routine.title}});
    if (!desk.front().confirm(question, desk.words().say(Sentence::verb_remove))) return;
    desk.file().edit(desk.words().say(Sentence::edit_remove, {{"name", routine.title}}),
                     [&](store::Edit& edit) { edit.remove(routine.id); });
}

std::string archive_text(const Desk& desk) {
    const auto routine = open_routine(desk);
    return routine && routine->archived ? "Take out of the a&rchive" : "A&rchive routine";
}

}  // namespace

std::vector<Action> routine_actions() {
    std::vector<Action> all = {
        {.id = "routine.add",
         .menu = Menu::routine,
         .text = "&Add routine…",
         .edits = true,
         .may_run = [](const Desk& desk) { return desk.may_write(); },
         .run = add_routine},
        {.id = "routine.change",
         .menu = Menu::routine,
         .text = "&Change routine…",
         .edits = true,
         .may_run = may_change,
         .run = change_routine},
        {.id = "routine.copy",
         .menu = Menu::routine,
         .text = "C&opy routine",
         .edits = true,
         .may_run = may_change,
         .run = copy_routine},
        {.id = "routine.archive",
         .menu = Menu::routine,
         .text = "A&rchive routine",
         .edits = true,
         .may_run = may_change,
         .run = archive_routine,
         .full_text = archive_text},
        {.id = "routine.remove",
         .menu = Menu::routine,
         .text = "Re&move routine…",
         .edits = true,
         .may_run = may_change,
         .run = remove_routine},
        {.id = "routine.library",
         .menu = Menu::routine,
         .text = "Add those to &begin with",
         .edits = true,
         .may_run =
             [](const Desk& desk) { return desk.may_write() && !missing_routines(desk.file()).empty(); },
         .run = [](Desk& desk) { add_missing_routines(desk.file(), desk.words()); }}};
    std::ranges::move(given_actions(), std::back_inserter(all));
    std::ranges::move(practice_actions(), std::back_inserter(all));
    std::ranges::move(piece_actions(), std::back_inserter(all));
    return all;
}

}  // namespace lowledger::desk
