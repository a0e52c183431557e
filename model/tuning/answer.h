#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "model/horns/kind.h"
#include "model/studio/records.h"
#include "model/tuning/card.h"
#include "model/tuning/certificate.h"
#include "model/tuning/figures.h"
#include "model/tuning/profile.h"
#include "model/tuning/remains.h"
#include "model/tuning/settings.h"

namespace lowledger::tuning {

/// What the teacher says beyond the readings.
struct TeacherHand {
    /// Slides that stay where they are.
    std::set<std::string> fixed;
    /// Weight of a note instead of the usual one; 0 leaves it out.
    std::map<units::Pitch, double> weights;
    /// Limits instead of the horn's.
    std::map<std::string, units::Millimetres> least;
    std::map<std::string, units::Millimetres> travel;
    /// Steps instead of the usual ones; 0: any position.
    std::optional<units::Millimetres> step;
    bool band_note_at_zero = false;
    bool operator==(const TeacherHand&) const = default;
};

/// Another horn of the student and what was read of them on it: it tells of the player.
struct OtherHorn {
    horns::HornKind kind;
    /// Where its slides stand, by slide id; a missing one is unknown.
    std::map<std::string, units::Millimetres> positions{};
    std::vector<studio::TuningSheet> sheets{};
};

/// Another student on the same horn and what was read of them: it tells of the horn.
struct OtherPlayer {
    studio::Level level = studio::Level::beginner;
    std::vector<studio::TuningSheet> sheets{};
};

/// All that an answer rests on.
struct TuningInputs {
    horns::HornKind kind;
    /// The horn's slides; one that is missing has the kind's least and travel.
    std::vector<studio::HornSlide> slides{};
    /// Where they stand today, by slide id; a missing one is unknown.
    std::map<std::string, units::Millimetres> positions{};
    studio::Level level = studio::Level::beginner;
    /// Empty: the level's.
    std::optional<units::Cents> tolerance{};
    /// The student's sheets on this horn, all of them; those not used are told in the profile.
    std::vector<studio::TuningSheet> sheets{};
    units::Hertz studio_a4 = units::standard_a4;
    units::Celsius usual_room{21.0};
    studio::Date today;
    /// The room that the card is for; empty: the usual one.
    std::optional<units::Celsius> room_today{};
    /// What the student's tuner is set to.
    units::Hertz tuner_a4 = units::standard_a4;
    TeacherHand hand{};
    std::vector<OtherHorn> other_horns{};
    std::vector<OtherPlayer> other_players{};
};

/// Whether the tuning notes are in. Until they are nothing is to be moved.
struct EnoughReadings {
    /// Steps of the kind's tuning order whose valves no used reading has; steps of slides that cannot move do
    /// not count.
    std::vector<horns::TuningStep> missing;
    [[nodiscard]] bool tuning_notes_in() const { return missing.empty(); }
    bool operator==(const EnoughReadings&) const = default;
};

/// Whether a hand slide can go where a note belongs.
enum class Reach { there, closed, end };

/// Where the hand slide belongs for a note.
struct PlaceOnSlide {
    units::Pitch note;
    horns::Fingering fingering;
    int partial = 0;
    /// Of the plain position, and of the note, from the slide all the way in. Plain positions count from
    /// where first is played, `SettingsConstants::hand_slide_home`.
    units::Millimetres plain{0.0};
    units::Millimetres out{0.0};
    /// `closed`: the note stays flat even with the slide in. `end`: it stays sharp at the end of the slide.
    Reach reach = Reach::there;
    /// What remains there.
    units::Cents left{0.0};
    [[nodiscard]] units::Millimetres offset() const { return out - plain; }
    bool operator==(const PlaceOnSlide&) const = default;
};

/// A note worth measuring next.
struct NextNote {
    units::Pitch note;
    horns::Fingering fingering;
    bool operator==(const NextNote&) const = default;
};

struct TuningAnswer {
    TuningProfile profile;
    SettingsQuestion question;
    SlideSettings settings;
    TuningCard card;
    Remains remains;
    /// Of a trombone.
    std::vector<PlaceOnSlide> places_on_slide;
    EnoughReadings enough;
    /// What `certify` says of the settings; empty until somebody has asked it.
    std::optional<Certificate> certificate{};
    /// Empty when one more reading would change nothing worth a note.
    std::optional<NextNote> next_note;
};

/// From readings to belief, settings, card and what remains (docs/tuning.md). Pure: equal inputs give equal
/// answers. Throws Refusal for inputs that have no sense (a slide unknown to the kind, travel below least, a
/// position outside them, a fingering that the horn has not), naming what it is about and what to do.
TuningAnswer answer(const TuningInputs& inputs, const Figures& figures = tuning::figures());

}  // namespace lowledger::tuning
