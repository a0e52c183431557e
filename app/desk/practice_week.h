#pragma once

#include <vector>

#include "app/desk/slip.h"
#include "model/store/studio_file.h"
#include "model/studio/practice.h"
#include "reports/words/words.h"

namespace lowledger::desk {

/// A student's week as their routine sheet shows it: what was given on any day of it, with boxes.
struct PracticeWeek {
    studio::StudentId student;
    studio::Date first;
    /// Sunday, or today if that is earlier.
    studio::Date last;
    /// Given on any of these days, or practised on one.
    std::vector<studio::Assignment> given;
    std::vector<studio::PracticeEntry> entries;
};

/// The week that many weeks before the one of `today`; its days after today are left out.
PracticeWeek practice_week(const store::StudioFile& file, studio::StudentId student, studio::Date today,
                           int weeks_ago);

/// Days of the week on which something was to be practised.
int days_due(const PracticeWeek& week, const store::StudioFile& file);
int days_practised(const PracticeWeek& week);

/// Boxes to tick for each routine, and what else was entered, to be kept or not.
Slip week_slip(const PracticeWeek& week, const store::StudioFile& file, const words::Words& words);

/// Files what was ticked and takes out what was not; what was entered with minutes or remarks and is still
/// ticked stays as it is.
void take_week(store::Edit& edit, const PracticeWeek& week, const SlipAnswers& answers);

}  // namespace lowledger::desk
