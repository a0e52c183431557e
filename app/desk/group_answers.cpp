#include "app/desk/group_answers.h"

#include <algorithm>
#include <utility>

#include "app/desk/desk.h"
#include "app/desk/given.h"
#include "model/tuning/inputs.h"
#include "model/units/refusal.h"

namespace lowledger::desk {
namespace {

using words::Sentence;

tuning::TuningInputs question_of(const Desk& desk, const pages::Player& player) {
    const auto& file = desk.file();
    auto question = tuning::inputs_of_studio(
        file.facts(), player.student, player.horn, player.kind, file.students(), file.horns(),
        [&](studio::HornId id) { return file.slide_history(id); }, file.sheets(player.student.id),
        file.sheets(player.horn.id), desk.today());
    question.hand = desk.hand_of(player.student.id, player.horn.id);
    return question;
}

PlayerAnswer answer_of(const Desk& desk, const pages::Player& player, bool large_print) {
    auto question = question_of(desk, player);
    const auto facts = desk.file().facts();
    auto answer = tuning::answer(question);
    return {.question = std::move(question),
            .page = {.facts = facts,
                     .student = player.student,
                     .horn = player.horn,
                     .kind = player.kind,
                     .answer = std::move(answer),
                     .date = desk.today(),
                     .paper = pages::paper_of(facts),
                     .large_print = large_print}};
}

}  // namespace

std::string name_of(const pages::Player& player) {
    return player.student.name + ", " + player.horn.mark;
}

std::vector<PlayerAnswer> answers_for(Desk& desk, const std::vector<pages::Player>& players,
                                      bool large_print) {
    std::vector<std::string> names;
    names.reserve(players.size());
    for (const auto& player : players)
        names.push_back(name_of(player));
    std::vector<PlayerAnswer> answers;
    const bool all = desk.front().work_through(names, [&](std::size_t i) {
        try {
            answers.push_back(answer_of(desk, players[i], large_print));
        } catch (const units::Refusal& refusal) {
            throw units::Refusal(names[i] + ": " + refusal.what());
        }
    });
    if (!all) answers.clear();
    return answers;
}

void give_out(Desk& desk, const std::vector<PlayerAnswer>& answers) {
    if (!desk.may_write()) return;
    std::vector<std::string> names;
    names.reserve(answers.size());
    for (const auto& answer : answers)
        names.push_back(answer.page.student.name);
    std::vector<studio::GivenSettings> given;
    desk.front().work_through(names, [&](std::size_t i) {
        auto settings = given_settings(answers[i].question, answers[i].page.answer,
                                       answers[i].page.student.id, answers[i].page.horn.id, desk.today());
        if (!given_already(desk.file(), settings)) given.push_back(std::move(settings));
    });
    if (given.empty()) return;
    desk.file().edit(desk.words().say(Sentence::edit_give_out_group), [&](store::Edit& edit) {
        for (const auto& settings : given)
            edit.add(settings);
    });
}

}  // namespace lowledger::desk
