#pragma once

#include <string>
#include <vector>

#include "app/desk/day.h"
#include "app/desk/desk.h"
#include "model/studio/overviews.h"

namespace lowledger::desk {

/// A student before a lesson, in short: what was done and is next, routines, sheet. `with_name` where several
/// are told of one after the other.
std::vector<BriefPart> brief_of(const words::Words& words, const studio::StudentAhead& ahead,
                                const std::string& horns, bool sheet_due, bool with_name);

/// All that the section 'Last time' says of the student whose page is open: the last lesson before the one
/// the page is turned to, what they practise, settings and sheet, pieces.
std::vector<BriefPart> last_time(const Desk& desk);

}  // namespace lowledger::desk
