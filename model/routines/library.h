#pragma once

#include <string_view>
#include <vector>

#include "model/studio/practice.h"

namespace lowledger::routines {

/// The routines that a new studio begins with, not yet filed, in the order of the file.
const std::vector<studio::Routine>& library();

/// Reads routines from TOML. Throws Refusal that names the file, the line and the key, and what is allowed.
std::vector<studio::Routine> read_routines(std::string_view toml_text, std::string_view file);

}  // namespace lowledger::routines
