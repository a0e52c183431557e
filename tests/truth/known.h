#pragma once

#include "tests/truth/world.h"

namespace lowledger::truth {

/// How far slides are moved out by `without_limits`, as none may stand below zero; further than any goes.
inline constexpr units::Millimetres moved_out{500.0};
/// The same question with slides that may go anywhere, all `moved_out`, and no cost of moving them.
tuning::SettingsQuestion without_limits(tuning::SettingsQuestion question);

/// One who knows a horn: every lean in what slides answer, with the slides where the ruler says they stand,
/// and how much each pull acts.
class Knowing {
  public:
    Knowing(const World& world, const Places& truly_now, int mouthpiece)
        : world_(world), truly_now_(truly_now), mouthpiece_(mouthpiece) {}

    /// Settings within the same limits, any position, every move worth it.
    [[nodiscard]] tuning::SlideSettings settings(tuning::SettingsQuestion question) const;

    /// The same with the ways as chosen in `settings`.
    [[nodiscard]] tuning::SlideSettings settings_with_ways(tuning::SettingsQuestion question,
                                                           const tuning::SlideSettings& settings) const;

    /// Where the slides belong: no limits and no cost of moving, the ways as chosen in `settings`.
    [[nodiscard]] Places where_they_belong(tuning::SettingsQuestion question,
                                           const tuning::SlideSettings& settings) const;

  private:
    void know(tuning::SettingsQuestion& question) const;

    const World& world_;
    Places truly_now_;
    int mouthpiece_;
};

/// Recommended positions by slide.
Places recommended(const tuning::SlideSettings& settings);

}  // namespace lowledger::truth
