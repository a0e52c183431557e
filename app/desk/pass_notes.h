#pragma once

#include <vector>

#include "app/desk/slip.h"
#include "model/units/pitch.h"

namespace lowledger::desk {

class Desk;

/// Asks on a slip for the three to five notes of a section pass, as they sound, in the studio's naming.
void ask_pass_notes(Slip& slip, const Desk& desk);

/// The notes of a slip that was taken.
std::vector<units::Pitch> pass_notes(const Desk& desk, const SlipAnswers& answers);

}  // namespace lowledger::desk
