#pragma once

#include <string>

#include "app/paper/gathering.h"
#include "reports/pages/lesson_notes.h"
#include "reports/pages/term_summary.h"

namespace lowledger::paper {

/// Both days in it.
pages::LessonNotes lesson_notes(const Gathering& from, const studio::Student& student, studio::Date first,
                                studio::Date last);

/// Up to the day, or the term's end if that was before. `remark` is the teacher's, empty for none yet.
pages::TermSummary term_summary(const Gathering& from, const studio::Student& student,
                                const studio::Term& term, const std::string& remark);

}  // namespace lowledger::paper
