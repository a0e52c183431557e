#pragma once

#include "model/store/studio_file.h"
#include "model/studio/date.h"
#include "model/studio/records.h"
#include "reports/pages/page_style.h"

namespace lowledger::paper {

/// Where pages are gathered from, for what day, and how they are printed.
struct Gathering {
    const store::StudioFile& file;
    /// The studio's, with the paper that was asked for.
    studio::StudioFacts facts;
    studio::Date day;
    pages::PageStyle style{};
};

}  // namespace lowledger::paper
