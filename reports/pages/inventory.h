#pragma once

#include <string>
#include <vector>

#include "model/studio/lending.h"
#include "model/studio/records.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/pages/page_style.h"
#include "reports/words/words.h"

namespace lowledger::pages {

/// What is in the studio's lockers and who has it.
struct Inventory {
    struct Holder {
        std::string name;
        /// Lent for home rather than played at school.
        bool at_home = false;
    };
    struct OneHorn {
        studio::Horn horn;
        std::string kind_name;
        /// The student whose own it is; empty: the school's or another's.
        std::string owner;
        std::vector<Holder> holders;
    };
    struct OneMouthpiece {
        studio::Mouthpiece mouthpiece;
        std::string horn_mark;
        std::string owner;
        std::string holder;
    };
    studio::StudioFacts facts;
    studio::Date date;
    std::vector<OneHorn> horns;
    std::vector<OneMouthpiece> mouthpieces;
    PageStyle style{};
};

/// A line each, on paper turned across, and the sum of what they are worth for each currency.
canvas::Document inventory(const Inventory& inventory, const words::Words& words, const canvas::Faces& faces);

}  // namespace lowledger::pages
