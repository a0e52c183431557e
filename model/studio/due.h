#pragma once

#include <optional>
#include <span>
#include <vector>

#include "model/studio/lending.h"
#include "model/studio/practice.h"

namespace lowledger::studio {

/// From `from` until, not including, `until`: half-open, so that a horn brought back in the morning can go
/// out the same day.
bool holds_on(Date from, const std::optional<Date>& until, Date on);
bool holds_on(const Loan& loan, Date on);
bool holds_on(const Assignment& assignment, Date on);

/// Whether two spans, half-open, share a day. A span of no days shares none.
bool share_a_day(Date from, const std::optional<Date>& until, Date other_from,
                 const std::optional<Date>& other_until);

/// Still out after the day it was due.
bool is_overdue(const Loan& loan, Date today);

/// The pieces of upkeep whose work is due again on or before `today` and was not done since, and those noted
/// but not yet done; in the order given.
std::vector<Upkeep> due(std::span<const Upkeep> upkeep, Date today);

/// To be practised on that day: it holds and the day is among its days.
bool is_for(const Assignment& assignment, Date on);

/// An assignment and how many of its days were practised.
struct PracticeCount {
    /// Days on which it was to be practised, up to and with `today`.
    int due = 0;
    /// Different days on which it was, these or others.
    int done = 0;
    bool operator==(const PracticeCount&) const = default;
};
/// Of one student, over the days from `first` to `last`, both in it.
PracticeCount practised(const Assignment& assignment, std::span<const PracticeEntry> entries,
                        StudentId student, Date first, Date last);

/// The assignment that goes on from `from`; the old one ends there as renewed. Amount and days are the old
/// one's: change them in what is returned, and `old.end` to `changed` then.
Assignment renewed(Assignment& old, Date from, std::optional<Date> until);
/// Ends it on that day, before its time; that day it is no longer practised.
void stop(Assignment& assignment, Date on);

}  // namespace lowledger::studio
