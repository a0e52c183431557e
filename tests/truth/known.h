#pragma once

#include <functional>

#include "tests/truth/world.h"

namespace lowledger::truth {

/// The horn's true lean, in what slides answer, of a way of a question with its slides where they stand now.
using TrueLean = std::function<units::Cents(const Played&)>;
TrueLean true_leans(const World& world, const Places& written_now, int mouthpiece);

/// The settings of one who knows every lean: the same limits, any position, every move worth it.
tuning::SlideSettings settings_knowing_all(tuning::SettingsQuestion question, const TrueLean& lean);

/// Where the slides belong: known leans, no limits and no cost of moving, the ways as chosen in `settings`.
Places where_they_belong(tuning::SettingsQuestion question, const tuning::SlideSettings& settings,
                         const TrueLean& lean);

/// Recommended positions by slide.
Places recommended(const tuning::SlideSettings& settings);

}  // namespace lowledger::truth
