#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "model/studio/date.h"
#include "model/studio/ids.h"

namespace lowledger::studio {

/// A record that a search found.
struct Found {
    /// As the studio file numbers them.
    enum class Kind {
        student = 1,
        horn,
        mouthpiece,
        group,
        routine,
        lesson,
        sheet,
        piece,
        event,
        upkeep,
        loan,
        assignment,
        practice
    } kind = Kind::student;
    /// The number of its id.
    std::int64_t number = 0;
    /// Empty for what has no day: students, horns, mouthpieces, groups and routines.
    std::optional<Date> on{};
    /// A dozen words around the first that was looked for.
    std::string excerpt{};
    /// Whose it is, and the horn it is about, where it has one.
    std::optional<StudentId> student{};
    std::optional<HornId> horn{};
    bool operator==(const Found&) const = default;
};

}  // namespace lowledger::studio
