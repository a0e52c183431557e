#pragma once

#include <map>
#include <string>
#include <vector>

#include "model/studio/overviews.h"
#include "model/studio/records.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/pages/page_style.h"
#include "reports/words/words.h"

namespace lowledger::pages {

/// A day's lessons, as the teacher takes them along.
struct DayList {
    studio::StudioFacts facts;
    studio::Date day;
    /// By time.
    std::vector<studio::LessonAhead> lessons;
    std::map<studio::HornId, std::string> marks;
    PageStyle style{};
};

/// When, who on which horn, what was said for today, what they practise, and a box to tick who was there.
canvas::Document day_list(const DayList& list, const words::Words& words, const canvas::Faces& faces);

}  // namespace lowledger::pages
