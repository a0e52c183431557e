#include <utility>

#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/pass_entry.h"
#include "app/desk/pass_notes.h"
#include "app/desk/whom.h"
#include "model/tuning/inputs.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

studio::TuningSheet sheet_of(const Desk& desk, const PassEntry& pass, std::size_t player,
                             const SlipAnswers& answers) {
    const auto& [student, horn, kind] = pass.players().at(player);
    studio::TuningSheet sheet{.id = {}, .student = student.id, .horn = horn.id, .on = answers.date("on")};
    sheet.warm = answers.checked("warm");
    sheet.tuner_a4 = desk.file().facts().a4;
    sheet.positions =
        tuning::known_positions(desk.file().slide_history(horn.id), desk.file().sheets(horn.id), sheet.on);
    sheet.readings = pass.readings(player);
    return sheet;
}

void file_pass(Desk& desk, const PassEntry& pass, const SlipAnswers& answers) {
    std::vector<studio::TuningSheet> sheets;
    for (std::size_t player = 0; player < pass.players().size(); ++player)
        if (!pass.readings(player).empty()) sheets.push_back(sheet_of(desk, pass, player, answers));
    if (sheets.empty()) return;
    const auto& words = desk.words();
    const auto name = words.say(Sentence::edit_pass, {{"date", words::date_text(words, answers.date("on"))}});
    desk.file().edit(name, [&](store::Edit& edit) {
        for (const auto& sheet : sheets)
            edit.add(sheet);
    });
}

void section_pass(Desk& desk) {
    const auto& words = desk.words();
    Slip slip(words.say(Sentence::pass_title), words.say(Sentence::pass_begin));
    ask_whom(slip, desk, false);
    ask_pass_notes(slip, desk);
    slip.date("on", words.say(Sentence::pass_on), desk.today())
        .check("warm", words.say(Sentence::pass_warm), true);
    slip.must([&desk](const SlipAnswers& answers) -> std::optional<SlipProblem> {
        if (answers.date("on") <= desk.today()) return std::nullopt;
        return SlipProblem{"on", desk.words().say(Sentence::pass_is_to_come)};
    });
    const auto answers = desk.front().ask(slip);
    if (!answers) return;
    PassEntry pass(players_chosen(desk, *answers), pass_notes(desk, *answers));
    const auto title = words.say(
        Sentence::foot_date,
        {{"title", words.say(Sentence::pass_title)}, {"date", words::date_text(words, answers->date("on"))}});
    if (desk.front().type_pass(title, pass)) file_pass(desk, pass, *answers);
}

}  // namespace

std::vector<Action> pass_actions() {
    return {{.id = "pass.type",
             .menu = Menu::sheet,
             .text = "Section &pass…",
             .key = "Ctrl+Shift+T",
             .edits = true,
             .starts_group = true,
             .may_run = [](const Desk& desk) { return desk.may_write(); },
             .run = section_pass}};
}

}  // namespace lowledger::desk
