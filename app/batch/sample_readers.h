#pragma once

#include <string_view>
#include <toml++/toml.h>
#include <vector>

#include "app/batch/sample_sources.h"

namespace lowledger::batch {

/// The students of `students.toml`. Throws Refusal that names file, line and key.
std::vector<SampleStudent> read_sample_students(const toml::table& root, std::string_view file);

/// Of `timetable.toml`, `lending.toml` and `notes.toml`. Throws Refusal that names file, line and key.
SampleBook read_sample_book(const toml::table& timetable, const toml::table& lending,
                            const toml::table& notes);

}  // namespace lowledger::batch
