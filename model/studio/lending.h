#pragma once

#include <optional>
#include <string>

#include "model/studio/date.h"
#include "model/studio/ids.h"
#include "model/studio/money.h"

namespace lowledger::studio {

/// A mouthpiece of the school's or a student's.
struct Mouthpiece {
    MouthpieceId id;
    /// What is written on it or its box: "M-3".
    std::string mark;
    /// Free text: cup, rim, shank.
    std::string size{};
    /// The horn it goes with; empty: none in particular.
    std::optional<HornId> horn{};
    /// Empty: the school's; else the student's own.
    std::optional<StudentId> owner{};
    std::string kept_in{};
    std::string condition{};
    std::optional<Money> value{};
    std::string remarks{};
    bool archived = false;
    bool operator==(const Mouthpiece&) const = default;
};

/// Work on a horn or a mouthpiece (exactly one of them): done, or noted to be done.
struct Upkeep {
    UpkeepId id;
    std::optional<HornId> horn{};
    std::optional<MouthpieceId> mouthpiece{};
    enum class Work { checked, cleaned, disinfected, greased, repaired, other } work = Work::checked;
    Date noted_on;
    /// Empty: still to be done; it stands on the repair list.
    std::optional<Date> done_on{};
    /// What was or is to be done: free text.
    std::string what{};
    /// Who does it.
    std::string by{};
    std::optional<Money> cost{};
    /// When the same work is due again.
    std::optional<Date> next_due{};
    /// Disinfected along with it, as on a hand-over.
    bool disinfected = false;
    bool operator==(const Upkeep&) const = default;
};

/// A horn taken home, by one student at a time: no two loans of a horn share a day. School use is a `HornUse`
/// and may be shared.
struct Loan {
    LoanId id;
    HornId horn;
    StudentId student;
    /// Goes along with the horn.
    std::optional<MouthpieceId> mouthpiece{};
    Date from;
    /// The day it was brought back, when it may be lent again; empty: still out.
    std::optional<Date> until{};
    /// When it is to be back.
    std::optional<Date> due{};
    std::string condition_out{};
    std::string condition_in{};
    std::string accessories{};
    /// When the form came back signed.
    std::optional<Date> signed_on{};
    std::string remarks{};
    bool operator==(const Loan&) const = default;
};

}  // namespace lowledger::studio
