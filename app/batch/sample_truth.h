#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "app/batch/sample_sources.h"
#include "model/acoustics/tube.h"
#include "model/horns/kind.h"
#include "model/tuning/figures.h"

namespace lowledger::batch {

/// What is true of a horn of the sample: its tube as made, and what its bore does to partials. Drawn from the
/// tuning model's figures and the seed, or told by the sources.
class TrueHorn {
  public:
    TrueHorn(const horns::HornKind& kind, const SampleHorn& told, const tuning::Figures& figures,
             std::uint64_t seed);

    /// Lean in the usual room against A4 = 440 with slides at `positions` (in the kind's order), before a
    /// player bends it.
    [[nodiscard]] units::Cents lean(units::Pitch note, const horns::Fingering& fingering, int partial,
                                    std::span<const units::Millimetres> positions) const;

  private:
    [[nodiscard]] units::Cents drawn(const std::string& term, units::Cents spread) const;
    [[nodiscard]] units::Cents of_partial(int partial) const;

    acoustics::Tube tube_;
    units::Cents overall_;
    const horns::HornKind& kind_;
    std::string mark_;
    const tuning::Figures& figures_;
    std::uint64_t seed_;
};

/// What is true of a player of the sample.
class TruePlayer {
  public:
    TruePlayer(std::string_view name, const tuning::LevelFigures& figures, std::uint64_t seed);

    /// What the player adds to every reading of a note. `from` is the pitch that the slope is counted from.
    [[nodiscard]] units::Cents habit(units::Pitch note, int partial, units::Pitch from) const;
    /// How far past its plain position the player puts a hand slide; the first is the slide all the way in.
    [[nodiscard]] units::Millimetres arm(int position) const;
    [[nodiscard]] const tuning::LevelFigures& figures() const { return figures_; }

  private:
    [[nodiscard]] units::Cents drawn(const std::string& term, units::Cents spread) const;

    std::string name_;
    const tuning::LevelFigures& figures_;
    std::uint64_t seed_;
};

/// A sitting in which a player of the sample is measured.
struct Sitting {
    const TrueHorn& horn;
    const TruePlayer& player;
    const horns::HornKind& kind;
    /// Where the slides really are, in the kind's order.
    std::vector<units::Millimetres> positions;
    const SampleSheet& told;
    units::Celsius usual_room;
    /// Names the sitting's own stream of numbers.
    std::string stream;
};

/// The readings that the tuner showed, in whole cents, in the order they were played: all notes once round,
/// then again.
std::vector<studio::Reading> play(const Sitting& sitting, const tuning::Figures& figures, std::uint64_t seed);

}  // namespace lowledger::batch
