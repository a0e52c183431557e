#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "model/horns/kind.h"
#include "model/studio/practice.h"
#include "model/studio/records.h"
#include "model/studio/timetable.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/pages/page_style.h"
#include "reports/words/words.h"

namespace lowledger::pages {

/// A routine as it was given.
struct RoutineOnSheet {
    studio::Routine routine;
    studio::Assignment assignment;
};

/// All that a student's routine sheet tells.
struct RoutineSheetInputs {
    studio::StudioFacts facts;
    studio::Student student;
    /// What the music is written for; empty: no horn of theirs is known, and music stands as it is written.
    std::optional<horns::HornKind> kind;
    /// The first of the seven days.
    studio::Date first;
    std::vector<RoutineOnSheet> routines;
    PageStyle style{};
};

/// Of `assignments`, what the student has on any of the seven days from `first`, their own and their groups'.
std::vector<RoutineOnSheet> routines_of_week(std::span<const studio::Assignment> assignments,
                                             std::span<const studio::Group> groups,
                                             std::span<const studio::Routine> routines,
                                             studio::StudentId student, studio::Date first);

/// What a student practises in a week: each routine with its aim, steps and dose, its music in the student's
/// reader with fingerings, and a box for every day it was asked for (a dash on the others); at the foot of
/// each page what to take care of. As many pages as it takes; a routine is kept on one page where it fits on
/// one.
canvas::Document routine_sheet(const RoutineSheetInputs& inputs, const words::Words& words,
                               const canvas::Faces& faces);

}  // namespace lowledger::pages
