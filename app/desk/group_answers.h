#pragma once

#include <functional>
#include <string>
#include <vector>

#include "model/tuning/answer.h"
#include "reports/pages/handout.h"
#include "reports/pages/player.h"

namespace lowledger::desk {

class Desk;

/// The settings of one of several players: what was asked, what was answered, and the page's inputs.
struct PlayerAnswer {
    tuning::TuningInputs question;
    pages::HandoutInputs page;
};

/// "Ida Holm, T-4"
std::string name_of(const pages::Player& player);

/// Answers for each of them in turn, with the teacher's hand where there is one; the front shows how far it
/// is. Empty if it was stopped. Throws Refusal that names who cannot be answered for.
std::vector<PlayerAnswer> answers_for(Desk& desk, const std::vector<pages::Player>& players,
                                      bool large_print);

/// Records that their settings were given out today as one step of undo; those already given out are passed
/// over.
void give_out(Desk& desk, const std::vector<PlayerAnswer>& answers);

}  // namespace lowledger::desk
