#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "model/studio/records.h"
#include "model/units/quantity.h"

namespace lowledger::tuning {

/// Where a figure comes from: a published source, common practice, or our own estimate.
enum class Mark { source, practice, estimate };

/// One constant as the data file has it, for lists that show what an answer rests on.
struct Figure {
    /// "take", "horn_overall"; with the level behind a point where it has one: "take.beginner".
    std::string key;
    double value = 0.0;
    /// "cents", "mm", "days", "" for a bare number.
    std::string unit;
    Mark mark = Mark::estimate;
    /// What it means, a phrase.
    std::string meaning;
    bool operator==(const Figure&) const = default;
};

/// What depends on the player's level. Standard deviations unless said otherwise.
struct LevelFigures {
    units::Cents take;
    units::Cents note_by_sitting;
    units::Cents sitting;
    units::Cents player_overall;
    units::Cents player_by_partial;
    /// For an octave away from the band's tuning note.
    units::Cents player_slope;
    units::Cents player_by_pitch;
    /// How far the player already corrects the horn: tuner hidden, and seen.
    double kappa = 0.0;
    double kappa_seen = 0.0;
    /// How sure kappa is, the same for both.
    double kappa_spread = 0.0;
    /// Part of the player's settled pitch that the main slide answers.
    double gamma = 0.0;
    /// Half-life of what is known of the player.
    double half_life_days = 0.0;
    units::Cents tolerance;
    /// Most that a player of this level should bend a note.
    units::Cents lip_up;
    units::Cents lip_down;
    /// How far out the first position of a hand slide is played.
    units::Millimetres hand_slide_home;
    /// Of where the player puts the hand slide for a position other than the first.
    units::Millimetres arm;
};

/// Every constant of the tuning model (docs/tuning.md). Standard deviations unless said otherwise.
struct Figures {
    LevelFigures beginner, middle, advanced;
    units::Cents horn_overall;
    /// Of valves 1, 2, ... in cents on their own note.
    std::vector<units::Cents> valve_tubes;
    units::Cents horn_by_partial;
    units::Cents horn_by_high_partial;
    units::Cents horn_pedal;
    units::Cents horn_by_set_and_partial;
    units::Cents kind_by_partial;
    units::Cents mouthpiece;
    units::Cents tuner;
    /// Part of the room's change that the air in the bore follows, and how sure that is.
    double room_beta = 0.0;
    double room_beta_spread = 0.0;
    /// Of a room whose temperature was not written down.
    units::Kelvins room_unknown;
    /// Of how much a slide's pull acts, about 1 (a bare number).
    double bore_spread = 0.0;
    /// From one time round to the next.
    units::Cents warming;
    units::Millimetres position_measured;
    units::Millimetres position_as_left;
    /// The same on a horn that others play too.
    units::Millimetres position_shared;
    /// Of a slide whose position nobody wrote down.
    units::Millimetres position_unknown;
    /// Most chance that an answer without any error warns of one, all its tests together, and the least
    /// number of standard deviations that is told (bare numbers).
    double false_alarms = 0.0;
    double outlying = 0.0;
    /// Chance that a take is an error, and how far errors lie.
    double gross_error = 0.0;
    units::Cents gross_spread;
    /// Weights of a note (bare numbers): core range, the rest of the usual range; pedals and seventh
    /// partials.
    double weight_core = 0.0;
    double weight_edge = 0.0;
    double weight_pedal_or_seventh = 0.0;
    /// The objective of the slide settings.
    double flat_weight = 0.0;
    double cost_per_cent_moved = 0.0;
    units::Cents worth_moving;
    double chance_of_better = 0.0;
    double chance_of_each = 0.0;
    units::Cents most_mean_sharp;
    units::SquareCents alternate_penalty;
    /// Steps of a card: horns longer than `long_horn` and the others.
    units::Millimetres step_long;
    units::Millimetres step_short;
    units::Millimetres long_horn;
    /// Takes that a card's step asks for.
    int card_takes = 3;
    /// Part of the level's most bend that air alone does.
    double air_part = 0.0;

    /// The same constants as a list, in the data file's order.
    std::vector<Figure> all;

    [[nodiscard]] const LevelFigures& of(studio::Level level) const;
};

/// The figures that come with the program.
const Figures& figures();

/// Reads the data file's form. Throws Refusal that names `file_name` and the key that is missing or wrong.
Figures read_figures(std::string_view toml, std::string_view file_name);

}  // namespace lowledger::tuning
