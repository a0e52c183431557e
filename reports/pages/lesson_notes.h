#pragma once

#include <string>
#include <vector>

#include "model/studio/lessons.h"
#include "model/studio/records.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/pages/page_style.h"
#include "reports/words/words.h"

namespace lowledger::pages {

/// What was noted in a student's lessons of a span.
struct LessonNotes {
    struct OneLesson {
        studio::Lesson lesson;
        /// Empty for a lesson alone.
        std::string group_name;
    };
    studio::StudioFacts facts;
    studio::Student student;
    /// Both in it.
    studio::Date first;
    studio::Date last;
    /// Oldest first.
    std::vector<OneLesson> lessons;
    PageStyle style{};
};

/// A paragraph for each lesson: what was done and what comes next.
canvas::Document lesson_notes(const LessonNotes& notes, const words::Words& words,
                              const canvas::Faces& faces);

}  // namespace lowledger::pages
