#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

#include "model/horns/kind.h"
#include "model/studio/records.h"

namespace lowledger::studio {

/// What to call a student: `called`, or the first word of the name.
std::string called(const Student& student);

/// A horn of that kind, not yet filed: the kind's text and its slides with their least and travel.
Horn horn_of(const horns::HornKind& kind);

/// Where a kind is built to stand, as the first entries of a new horn's history.
std::vector<SlidePosition> designed_positions(const horns::HornKind& kind, HornId horn, Date on);

/// The latest position of every slide on or before `on`, by slide id, from a history in any order. Of one day
/// the one filed last holds.
std::map<std::string, units::Millimetres> positions_on(std::span<const SlidePosition> history, Date on);

/// Whether the student plays that horn on that day.
bool holds_on(const HornUse& use, Date on);

/// The horns of the uses that hold on that day, in the order of the uses.
std::vector<HornId> horns_on(std::span<const HornUse> uses, StudentId student, Date on);

}  // namespace lowledger::studio
