#pragma once

#include <map>
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
SlidesToday slides_today(const TuningInputs& inputs);

/// All takes of one note and fingering in one sitting.
struct MeasuredNote {
    Playing playing;
    const studio::TuningSheet* sheet = nullptr;
    std::vector<const studio::Reading*> readings{};
    /// Each take brought to the usual room and the studio's A4, and their mean.
    std::vector<units::Cents> takes{};
    units::Cents mean{};
    /// What acoustics expects of it, with what the player corrects.
    units::Cents expected{};
    /// 1 - kappa.
    double horn_share = 1.0;
    Terms terms{};
    /// Variance of the mean beyond its terms: the note that day, and the takes.
    units::SquareCents noise{};
};

/// The sheets that belief rests on, and those that it does not with the reason.
struct SheetsSorted {
    /// Oldest first.
    std::vector<const studio::TuningSheet*> used;
    std::vector<SheetNotUsed> not_used;
};
SheetsSorted sort_sheets(const std::vector<studio::TuningSheet>& sheets);

/// A number for each mouthpiece that the sheets name.
class Mouthpieces {
  public:
    explicit Mouthpieces(const std::vector<const studio::TuningSheet*>& used);
    [[nodiscard]] int number(const std::string& mouthpiece) const { return numbers_.at(mouthpiece); }
    /// That of the latest sheet.
    [[nodiscard]] int latest() const { return latest_; }

  private:
    std::map<std::string, int> numbers_;
    int latest_ = 0;
};

/// Readings of the used sheets with their terms. False tones are left out and counted in `left_out`.
std::vector<MeasuredNote> measured_notes(const TuningInputs& inputs, const Figures& figures,
                                         const TermModel& model,
                                         const std::vector<const studio::TuningSheet*>& used, int& left_out);

/// Adds what is not known of where the slides stand today.
void add_places_today(Terms& terms, const TermModel& model, const SlidesToday& today, const Playing& playing,
                      double share);

}  // namespace lowledger::tuning
