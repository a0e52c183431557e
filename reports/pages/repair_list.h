#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/studio/lending.h"
#include "model/studio/records.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/pages/page_style.h"
#include "reports/words/words.h"

namespace lowledger::pages {

/// What waits for a technician.
struct RepairList {
    /// Work on one horn or mouthpiece.
    struct Item {
        std::string mark;
        /// Of a horn; empty for a mouthpiece.
        std::string kind_name;
        std::string serial_number;
        std::string locker;
        /// Who has it.
        std::string holder;
        /// Noted or due again; empty where it is only about stuck slides.
        std::vector<studio::Upkeep> works;
        /// By name.
        std::vector<std::string> stuck_slides;
    };
    studio::StudioFacts facts;
    studio::Date date;
    std::vector<Item> items;
    PageStyle style{};
};

/// A line for each piece of work, with room to write what was done; the stuck slides of each horn.
canvas::Document repair_list(const RepairList& list, const words::Words& words, const canvas::Faces& faces);

}  // namespace lowledger::pages
