#pragma once

#include <string>
#include <vector>

#include "model/studio/records.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/pages/page_style.h"
#include "reports/words/words.h"

namespace lowledger::pages {

/// Who is in a class, with the horns they play on the day.
struct ClassList {
    struct Member {
        studio::Student student;
        std::vector<studio::Horn> horns;
    };
    studio::StudioFacts facts;
    studio::Date date;
    /// Empty: everybody, or those chosen one by one.
    std::string group;
    std::vector<Member> members;
    PageStyle style{};
};

/// Names with year, horn, locker, and whom to call.
canvas::Document class_list(const ClassList& list, const words::Words& words, const canvas::Faces& faces);

}  // namespace lowledger::pages
