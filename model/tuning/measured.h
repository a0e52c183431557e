#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/tuning/answer.h"
#include "model/tuning/terms.h"

namespace lowledger::tuning {

/// Where the slides of a horn stand today, in the kind's order; of an unknown one its designed position.
struct SlidesToday {
    std::vector<units::Millimetres> at;
    std::vector<bool> known;
};
SlidesToday slides_today(const horns::HornKind& kind,
                         const std::map<std::string, units::Millimetres>& positions);
SlidesToday slides_today(const TuningInputs& inputs);

/// The sheets that belief rests on, and those that it does not with the reason.
struct SheetsSorted {
    /// Oldest first.
    std::vector<const studio::TuningSheet*> used;
    std::vector<SheetNotUsed> not_used;
};
SheetsSorted sort_sheets(const std::vector<studio::TuningSheet>& sheets);

/// A player on a horn: a source of readings.
struct PlayerOnHorn {
    TermModel model;
    SlidesToday today;
    SheetsSorted sheets;
    /// Others play the horn too.
    bool shared = false;
    /// Where the slides stood at the first used sheet; today, if there is none.
    std::vector<units::Millimetres> first_at{};
};

/// All takes of one note and fingering in one sitting.
struct MeasuredNote {
    Playing playing;
    /// Index of the player on the horn; 0 are those that the answer is for.
    std::size_t source = 0;
    /// Index of the sitting among all of all sources.
    std::size_t sitting = 0;
    const studio::TuningSheet* sheet = nullptr;
    std::vector<const studio::Reading*> readings{};
    /// Each take brought to the usual room and the studio's A4, and their mean.
    std::vector<units::Cents> takes{};
    /// The part of a take's weight that each is counted with, 1 but for those told as outlying.
    std::vector<double> counted{};
    units::Cents mean{};
    /// What acoustics expects of it, with what the player corrects.
    units::Cents expected{};
    /// 1 - kappa.
    double horn_share = 1.0;
    Terms terms{};
    /// Variance of the mean beyond its terms: the note that day, and the takes.
    units::SquareCents noise{};
};

/// What the takes of a sitting, each against its own note's mean, say of the pitch still rising: the
/// least-squares cents from one time round to the next. With the means it is all that equal takes have to
/// say.
struct Warming {
    std::size_t sitting = 0;
    const studio::TuningSheet* sheet = nullptr;
    units::Cents each_round{};
    /// Sum over takes of (round - mean round of its note)^2.
    double squares = 0.0;
    Terms terms{};
    units::SquareCents noise{};
};

/// Everything that was read, with the terms of each reading.
struct Evidence {
    std::vector<PlayerOnHorn> sources;
    std::vector<MeasuredNote> notes;
    std::vector<Warming> warmings;
    /// Number of the mouthpiece that the answer's player used last.
    int mouthpiece = 0;
    /// Takes of false tones in the answer's own sheets: kept, not used.
    int false_tones = 0;

    [[nodiscard]] const PlayerOnHorn& own() const { return sources.front(); }
};

/// Puts readings and terms together. Takes that are `told` to be outlying count as much as is told there.
/// `corrects_more` is what the answer's player is taken to correct beyond the level's kappa: the model is
/// linear about it, and means the same whatever it is.
Evidence evidence_of(const TuningInputs& inputs, const Figures& figures, double corrects_more = 0.0,
                     const std::vector<OutlyingTake>& told = {});

/// What a player corrects: the level's kappa and what is known beyond it, within 0 and 0.9.
double part_corrected(double kappa, double corrects_more);
/// What is left of the horn's lean, 1 - kappa.
double horn_share(double kappa, double corrects_more);

/// Adds what is not known of where the slides stand today.
void add_places_today(Terms& terms, const PlayerOnHorn& source, const Playing& playing, double share);

}  // namespace lowledger::tuning
