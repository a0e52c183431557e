#pragma once

#include "model/tuning/answer.h"

namespace lowledger::tuning {

/// What moving the slides as `settings` says does to notes, with what the player takes back.
class MovedLeans {
  public:
    MovedLeans(const SettingsQuestion& question, const SlideSettings& settings, double kappa);

    /// Of the horn.
    [[nodiscard]] units::Cents on_horn(const horns::Fingering& fingering) const;
    /// As played: (1 - kappa) of it.
    [[nodiscard]] units::Cents as_played(const horns::Fingering& fingering) const;
    /// d(lean)/d(position) of a slide there, of the horn.
    [[nodiscard]] units::CentsPerMillimetre slope(std::size_t slide, const horns::Fingering& fingering) const;

  private:
    const acoustics::Tube& tube_;
    std::vector<units::Millimetres> now_;
    std::vector<units::Millimetres> after_;
    double horn_share_;
};

}  // namespace lowledger::tuning
