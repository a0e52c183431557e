#pragma once

#include <iosfwd>

#include "app/batch/program.h"
#include "model/studio/date.h"

namespace CLI {
class App;
}

namespace lowledger::batch {

/// What a verb works with; lives as long as the command.
struct Surroundings {
    std::ostream& out;
    std::ostream& errors;
    studio::Date today;
    /// A verb sets it when it ends otherwise than done without being refused.
    Ending ending = Ending::done;
};

/// Each adds one verb to the command line; the verb runs while the line is read, and throws Refusal.
void add_settings_verb(CLI::App& program, Surroundings& surroundings);
void add_handouts_verb(CLI::App& program, Surroundings& surroundings);
void add_pages_verb(CLI::App& program, Surroundings& surroundings);
void add_make_studio_verb(CLI::App& program, Surroundings& surroundings);
void add_chart_verb(CLI::App& program, Surroundings& surroundings);
void add_kinds_verb(CLI::App& program, Surroundings& surroundings);
void add_check_verb(CLI::App& program, Surroundings& surroundings);
void add_dump_verb(CLI::App& program, Surroundings& surroundings);

}  // namespace lowledger::batch
