#pragma once

#include <optional>
#include <vector>

#include "model/horns/fingering.h"
#include "model/studio/date.h"
#include "model/studio/ids.h"
#include "model/units/pitch.h"
#include "model/units/quantity.h"

namespace lowledger::tuning {

/// What is believed of one way of playing a note: in the studio's usual room, against the studio's A4, with
/// the slides where they stand now.
struct ProfileNote {
    units::Pitch note;
    horns::Fingering fingering{};
    int partial = 0;
    /// The chart's usual fingering of this note.
    bool usual = true;
    /// Long-run lean as the student plays it, and its standard deviation.
    units::Cents mean{};
    units::Cents spread{};
    /// The part of it that slides should answer: the horn, and gamma of the player's settled pitch.
    units::Cents slides_mean{};
    units::Cents slides_spread{};
    /// What a card aims for: (1 - kappa) of the horn, the player's settled pitch and its slope.
    units::Cents aim{};
    /// Takes of just this fingering on this note in the sheets used, and their plain mean, brought to the
    /// usual room, the studio's A4 and the slides as they stand.
    int takes = 0;
    std::optional<units::Cents> mean_of_takes{};
    /// 0: all from acoustics and what is usual; 1: all from readings (1 - posterior/prior variance of
    /// `mean`).
    double share_of_data = 0.0;
    /// As `mean`, but with the hand slide exactly in its plain position, whatever the arm does; equal to it
    /// on a horn without one.
    units::Cents placed{};
    bool operator==(const ProfileNote&) const = default;
};

/// A take far from its fellows. It is used all the same: the teacher decides.
struct OutlyingTake {
    studio::TuningSheetId sheet;
    studio::Date on;
    units::Pitch note;
    horns::Fingering fingering;
    int take = 1;
    /// As the tuner showed it.
    units::Cents reading;
    /// How far sharp (+) or flat (-) of the other takes of this note; of what the other notes say where it
    /// has no other take.
    units::Cents from_fellows;
    bool only_take = false;
    bool operator==(const OutlyingTake&) const = default;
};

enum class WhyNotUsed { cold, mute, no_readings };
struct SheetNotUsed {
    studio::TuningSheetId sheet;
    studio::Date on;
    WhyNotUsed why = WhyNotUsed::cold;
    bool operator==(const SheetNotUsed&) const = default;
};

/// What is believed of a student on a horn.
struct TuningProfile {
    /// By pitch, the usual fingering of each first.
    std::vector<ProfileNote> notes;
    std::vector<OutlyingTake> outlying;
    std::vector<SheetNotUsed> not_used;
    int sheets_used = 0;
    int takes_used = 0;
    /// Takes of false tones in the sheets used: kept, not used.
    int false_tones_left_out = 0;
    /// Covariance of `slides_mean`, cents squared, notes x notes by rows.
    std::vector<double> slides_covariance;

    [[nodiscard]] const ProfileNote* usual(units::Pitch note) const;
    [[nodiscard]] const ProfileNote* way(units::Pitch note, const horns::Fingering& fingering) const;
    bool operator==(const TuningProfile&) const = default;
};

}  // namespace lowledger::tuning
