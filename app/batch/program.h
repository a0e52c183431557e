#pragma once

#include <iosfwd>

#include "model/studio/date.h"

namespace lowledger::batch {

/// What the program ends with (docs/batch.md).
enum class Ending {
    done = 0,
    /// Something given or asked for cannot be; a sentence on the error stream says what and what to do.
    refused = 1,
    /// The command line itself is wrong.
    wrong_command = 2,
    /// `check` found a studio that is not sound.
    not_sound = 3,
    /// A mistake of the program's own.
    failed = 4,
};

/// Runs one command. `today` is the day that ages of sheets are counted to. Throws nothing.
Ending run(int count, const char* const* words, std::ostream& out, std::ostream& errors, studio::Date today);

}  // namespace lowledger::batch
