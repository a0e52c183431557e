#pragma once

#include <string_view>
#include <toml++/toml.h>
#include <vector>

#include "app/batch/sample_sources.h"

namespace lowledger::batch {

/// The students of `students.toml`. Throws Refusal that names file, line and key.
std::vector<SampleStudent> read_sample_students(const toml::table& root, std::string_view file);

}  // namespace lowledger::batch
