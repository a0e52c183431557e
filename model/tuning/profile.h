#pragma once

#include <optional>
#include <string>
#include <utility>
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

/// A take far from its fellows. It counts less than others, by the chance that it is an error.
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
    /// The part of a take's weight that it is counted with.
    double counted = 1.0;
    bool operator==(const OutlyingTake&) const = default;
};

/// What may have happened where the slides were said to be moved, or to have stayed.
enum class MoveKind {
    as_told,
    /// The slide, or all of them, stayed where it was before.
    nothing_moved,
    /// It went as far, but in instead of out or out instead of in.
    wrong_way,
    /// Another slide went that far instead.
    another_slide,
    /// It stands `off` from where it was written down.
    elsewhere
};

/// One account of a sitting's slides, and how well the readings bear it out.
struct MoveAccount {
    MoveKind what = MoveKind::as_told;
    /// The slide that it is about; empty: all that were moved.
    std::string slide{};
    /// The slide that went instead, of another_slide.
    std::string instead{};
    /// True place less the written one, with its standard deviation, of elsewhere.
    units::Millimetres off{};
    units::Millimetres off_spread{};
    /// Logarithm of how many times likelier it makes the readings than `as_told` does.
    double log_ratio = 0.0;
    bool operator==(const MoveAccount&) const = default;
};

/// Whether the slides of a later sheet stand where it says. A first sheet cannot tell: a wrong place and a
/// tube longer than the kind's read alike.
struct MoveCheck {
    studio::TuningSheetId sheet;
    studio::Date on;
    /// The sheet before.
    studio::Date since;
    /// Slides that were said to be moved between the two, and by how much (out positive).
    std::vector<std::pair<std::string, units::Millimetres>> moved{};
    /// The likeliest account, whether or not it is told.
    MoveAccount likeliest{};
    /// Told: so unlikely as told that a warning is due.
    bool told = false;
    bool operator==(const MoveCheck&) const = default;
};

/// A sheet whose readings are more like another horn's.
struct OtherHornWarning {
    studio::TuningSheetId sheet;
    studio::Date on;
    /// Logarithm of how many times likelier another horn makes the readings.
    double log_ratio = 0.0;
    /// Index of the student's other horn that it fits best; empty: one that is not known.
    std::optional<std::size_t> fits{};
    bool operator==(const OtherHornWarning&) const = default;
};

/// What a player takes back of the horn's lean without knowing.
struct Correction {
    /// The level's figure until slides were moved and read on both sides of the move.
    double part = 0.0;
    double spread = 0.0;
    /// 90 % interval, within 0 to 1.
    double low = 0.0;
    double high = 1.0;
    /// 0: all from the level; 1: all from readings.
    double share_of_data = 0.0;
    bool operator==(const Correction&) const = default;
};

/// What a player's notes share, whatever the horn.
struct SettledPitch {
    units::Cents mean{};
    units::Cents spread{};
    /// The part of it that the main slide answers: gamma of the mean. Every `ProfileNote::slides_mean` has
    /// it.
    units::Cents answered{};
    bool operator==(const SettledPitch&) const = default;
};

/// How much a slide's pull acts, 1 as its length says, and the standard deviation of that.
struct SlideBelief {
    std::string slide;
    double bore = 1.0;
    double bore_spread = 0.0;
    bool operator==(const SlideBelief&) const = default;
};

/// Where a trombonist's arm puts a position, out from the plain one, apart from what the horn does.
struct ArmBelief {
    int position = 2;
    units::Millimetres out{};
    units::Millimetres spread{};
    double share_of_data = 0.0;
    bool operator==(const ArmBelief&) const = default;
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
    /// Later sheets, oldest first: whether their slides stand as written.
    std::vector<MoveCheck> moves{};
    std::vector<OtherHornWarning> other_horn{};
    Correction correction{};
    SettledPitch settled_pitch{};
    /// In the kind's order.
    std::vector<SlideBelief> slides{};
    /// Second to seventh position; empty without a hand slide.
    std::vector<ArmBelief> arm{};
    std::vector<SheetNotUsed> not_used;
    int sheets_used = 0;
    int takes_used = 0;
    /// Sheets of the student's other horns and of the horn's other players that were used too.
    int sheets_of_other_horns = 0;
    int sheets_of_other_players = 0;
    /// Takes of false tones in the sheets used: kept, not used.
    int false_tones_left_out = 0;
    /// Covariance of `slides_mean`, cents squared, notes x notes by rows.
    std::vector<double> slides_covariance;

    [[nodiscard]] const ProfileNote* usual(units::Pitch note) const;
    [[nodiscard]] const ProfileNote* way(units::Pitch note, const horns::Fingering& fingering) const;
    bool operator==(const TuningProfile&) const = default;
};

}  // namespace lowledger::tuning
