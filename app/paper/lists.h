#pragma once

#include <string>
#include <vector>

#include "app/paper/gathering.h"
#include "reports/pages/class_list.h"
#include "reports/pages/day_list.h"
#include "reports/pages/inventory.h"
#include "reports/pages/repair_list.h"

namespace lowledger::paper {

/// `group` names the class that was asked for; empty for everybody or single ones.
pages::ClassList class_list(const Gathering& from, const std::vector<studio::Student>& students,
                            const std::string& group);
pages::DayList day_list(const Gathering& from);
/// All horns and mouthpieces that are not archived.
pages::Inventory inventory(const Gathering& from);
/// Work that is noted or due again on the day, and stuck slides, by horn.
pages::RepairList repair_list(const Gathering& from);

}  // namespace lowledger::paper
