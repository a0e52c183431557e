#pragma once

#include <optional>
#include <span>
#include <vector>

#include "model/horns/kind.h"
#include "model/studio/due.h"
#include "model/studio/practice.h"
#include "model/studio/timetable.h"

namespace lowledger::studio {

/// What a student practises on that day: of `assignments` the student's own ones that hold, and those of
/// groups that they are of on that day. In the given order.
std::vector<Assignment> assigned_on(std::span<const Assignment> assignments, std::span<const Group> groups,
                                    StudentId student, Date on);

/// The same again from `today` for as long as before; the old one ends then, if it has not ended yet, as
/// renewed. Empty for one without an end, which needs no renewing, and for one that only begins today or
/// later.
std::optional<Assignment> renewed_for_as_long(Assignment& old, Date today);

/// Whether the routine is for that level, and for horns of that kind: one of its words stands in the kind's
/// name, capitals or not.
bool is_for(const Routine& routine, Level level);
bool is_for(const Routine& routine, const horns::HornKind& kind);

}  // namespace lowledger::studio
