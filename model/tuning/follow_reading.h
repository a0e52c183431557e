#pragma once

#include <optional>
#include <vector>

#include "model/tuning/answer.h"
#include "model/tuning/belief.h"
#include "model/tuning/settings_worth.h"

namespace lowledger::tuning {

/// The settings as the numerical kernel has them: positions, and the index of each note's way.
struct Chosen {
    Positions at;
    Choice ways;
};
Chosen chosen_by(const SettingsQuestion& question, const SlideSettings& settings);

/// The place model of the ways and positions that the settings chose.
PlaceModel place_model_of(const SettingsQuestion& question, const SlideSettings& settings);

/// How far slides should follow a note that reads beside its aim.
class ReadingFollowed {
  public:
    ReadingFollowed(const TuningInputs& inputs, const Belief& belief, const SettingsQuestion& question,
                    const SlideSettings& settings, const Figures& figures);

    /// Out for each cent that note `note` of the profile reads sharp of its aim; where `against` is given, of
    /// what it reads so beyond that note. The regression of where the slide belongs on the reading: the
    /// covariance of the two over the variance of the reading, takes as on a card. `aim_off` is
    /// the standard deviation of the aim for reasons beyond the belief.
    [[nodiscard]] units::Millimetres for_a_cent(std::size_t slide, std::size_t note,
                                                std::optional<std::size_t> against,
                                                units::Cents aim_off) const;

  private:
    [[nodiscard]] double place_with_reading(std::size_t slide, std::size_t note) const;

    const Belief& belief_;
    std::vector<std::size_t> ways_;
    PlaceModel model_;
    /// Of a reading, beyond the lean as played: what notes have of their own, and what a sitting shares.
    double of_note_ = 0.0;
    double of_sitting_ = 0.0;
};

}  // namespace lowledger::tuning
