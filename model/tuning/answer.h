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

/// Where the main slide belongs by what the horn does, and with the part of the player's settled pitch that
/// slides answer.
struct BothMains {
    std::string slide;
    /// Any position within the limits, the other slides as recommended, no cost of moving.
    units::Millimetres horn_alone;
    units::Millimetres with_player;
    /// What the player adds to it: out is positive.
    [[nodiscard]] units::Millimetres by_player() const { return with_player - horn_alone; }
    bool operator==(const BothMains&) const = default;
};

/// How well one reading of a note places a slide.
struct NoteForSlide {
    units::Pitch note;
    horns::Fingering fingering;
    int partial = 0;
    /// Standard deviation of the next reading over cents per mm.
    units::Millimetres spread;
    /// Its weight among the notes of the question, which sum to 1.
    double weight = 0.0;
    bool operator==(const NoteForSlide&) const = default;
};

/// Which of the notes through a valve to set its slide by, where the tuning order sets it through several
/// valves.
struct NotesForSlide {
    std::string slide;
    /// The best first: by least variance of the place over weight.
    std::vector<NoteForSlide> notes;
    bool operator==(const NotesForSlide&) const = default;
};

/// A slide at its limit whose notes stay out of tune on the side where it can go no further: the tube is too
/// short (at its travel) or too long (at its least).
struct TubeOff {
    std::string slide;
    Limit limit = Limit::travel;
    /// Weighted mean lean expected of the notes that use it, as slides should answer it.
    units::Cents left;
    bool operator==(const TubeOff&) const = default;
};

/// One rule for all notes that are usually played with one fingering: another fingering for every one of
/// them, which costs little more than choosing note by note.
struct FamilyRule {
    horns::Fingering usual;
    horns::Fingering instead;
    /// At least two.
    std::vector<units::Pitch> notes;
    /// The objective with the slides as recommended: every note by the usual fingering; by the rule; each as
    /// is best.
    units::SquareCents by_usual;
    units::SquareCents by_rule;
    units::SquareCents by_choice;
    bool operator==(const FamilyRule&) const = default;
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
    /// Empty where no slide acts on all notes and may move, or the tuning notes are not in.
    std::optional<BothMains> both_mains{};
    std::vector<NotesForSlide> notes_for_slides{};
    /// Of slides that may move; where `left` is at least `SettingsConstants::worth_moving`.
    std::vector<TubeOff> tubes_off{};
    /// Rules worth having, the cheapest first.
    std::vector<FamilyRule> families{};
};

/// From readings to belief, settings, card and what remains (docs/tuning.md). Pure: equal inputs give equal
/// answers. Throws Refusal for inputs that have no sense (a slide unknown to the kind, travel below least, a
/// position outside them, a fingering that the horn has not), naming what it is about and what to do.
TuningAnswer answer(const TuningInputs& inputs, const Figures& figures = tuning::figures());

}  // namespace lowledger::tuning
