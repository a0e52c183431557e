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

/// What lies in a horn's case, for the teacher and the technician.
struct HornCard {
    struct Slide {
        std::string name;
        studio::HornSlide slide;
        /// Empty: not known.
        std::optional<units::Millimetres> now;
    };
    studio::StudioFacts facts;
    studio::Date date;
    studio::Horn horn;
    std::string kind_name;
    /// The student whose own it is; empty: the school's or another's.
    std::string owner;
    /// Who has it, by name.
    std::vector<std::string> holders;
    std::vector<Slide> slides;
    /// Oldest first.
    std::vector<studio::Upkeep> upkeep;
    /// As the kind has them.
    std::vector<std::string> cautions;
    PageStyle style{};
};

/// Numbers, place and condition; slides in mm; upkeep, the newest first; cautions.
canvas::Document horn_card(const HornCard& card, const words::Words& words, const canvas::Faces& faces);

}  // namespace lowledger::pages
