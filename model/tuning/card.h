#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/horns/fingering.h"
#include "model/tuning/settings.h"
#include "model/units/celsius.h"
#include "model/units/hertz.h"
#include "model/units/pitch.h"
#include "model/units/quantity.h"

namespace lowledger::tuning {

/// One slide of the card, in working order.
struct CardStep {
    std::string slide;
    /// The note that sets it, and how it is played.
    units::Pitch note;
    horns::Fingering fingering{};
    int partial = 0;
    Advice advice = Advice::leave;
    Limit limit = Limit::none;
    /// False: say how far to move, not where to; `now` is a guess.
    bool position_known = true;
    units::Millimetres now{};
    units::Millimetres to{};
    /// to - now: positive is out, which is flatter.
    units::Millimetres change{};
    /// What the student's own tuner should read then, in today's room.
    units::Cents aim{};
    /// False: the open note's aim, absolute. True: if the open note ended off its aim, add that to this one.
    bool shifts_with_open_note = true;
    units::Cents tolerance{};
    /// Outside the tolerance move by `part_of_miss * miss / cents_per_mm`, out where it reads sharp.
    double part_of_miss = 0.0;
    units::CentsPerMillimetre cents_per_mm{};
    /// 90 % half-width of where the slide belongs; empty when no note speaks of it.
    std::optional<units::Millimetres> half_width{};
    bool operator==(const CardStep&) const = default;
};

/// The band's tuning note and what it should read on the student's tuner; on a trombone with the hand slide
/// where first is played.
struct BandNote {
    units::Pitch note;
    horns::Fingering fingering;
    units::Cents reading;
    bool operator==(const BandNote&) const = default;
};

/// The settings as steps that a student can follow in any room.
struct TuningCard {
    int warm_up_minutes = 5;
    /// Takes of each note.
    int takes = 3;
    std::vector<CardStep> steps;
    std::optional<BandNote> band_note;
    /// How far out a trombone's first position is played; the steps' notes are read with the slide in.
    units::Millimetres hand_slide_home{0.0};
    /// What the readings are for.
    units::Hertz tuner_a4 = units::standard_a4;
    units::Celsius room{21.0};
    bool room_known = false;
    bool operator==(const TuningCard&) const = default;
};

}  // namespace lowledger::tuning
