#pragma once

#include "model/store/studio_file.h"

namespace lowledger::store {

/// How much an invented studio holds. The defaults are forty years of a busy one: in all 2,400 students, 300
/// horns, 100,000 lessons and 2.5 million readings.
struct StudioSize {
    int years = 40;
    int new_students_a_year = 60;
    int horns = 300;
    int lessons_a_year = 2500;
    int sheets_a_year = 1250;
    int readings_a_sheet = 50;
    studio::Date last_day = studio::Date(2026, 11, 25);
};

/// Makes that studio at `path`, the same one each time. A year is one edit; the file is opened again after
/// each, so that the steps of undo are let go.
void make_forty_years(const std::filesystem::path& path, const StudioSize& size);

}  // namespace lowledger::store
