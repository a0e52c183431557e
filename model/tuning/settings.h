#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "model/acoustics/tube.h"
#include "model/horns/fingering.h"
#include "model/units/pitch.h"
#include "model/units/quantity.h"

namespace lowledger::tuning {

/// One way of playing a note, and what is believed of its lean with the slides where they stand now.
struct PlayedNote {
    horns::Fingering fingering;
    int partial = 0;
    /// Expected long-run lean with the slides where they stand, of what slides should answer (horn, and a
    /// part of the player's pitch).
    units::Cents mean;
    /// Standard deviation of that belief.
    units::Cents spread;
    /// How many takes it rests on.
    int takes = 0;
    /// Cost of choosing it instead of the usual one.
    units::SquareCents penalty;
    bool operator==(const PlayedNote&) const = default;
};

/// A note of the question: its weight and the ways of playing it, the usual one first.
struct QuestionNote {
    units::Pitch note;
    double weight = 1.0;
    std::vector<PlayedNote> ways;
    bool operator==(const QuestionNote&) const = default;
};

/// A slide of the question.
struct QuestionSlide {
    std::string slide;
    units::Millimetres now;
    units::Millimetres least;
    units::Millimetres travel;
    /// Stuck, or the teacher says so: it stays where it is.
    bool fixed = false;
    /// False: `now` is a guess (the designed position); advice is how far to move, not where to.
    bool position_known = true;
    bool operator==(const QuestionSlide&) const = default;
};

/// Everything of the objective that is not measured (docs/tuning.md, 'Slide settings').
struct SettingsConstants {
    /// `a`: weight of a flat square against a sharp one.
    double flat_weight = 1.5;
    /// Cost of a cent moved, summed over the slides.
    double cost_per_cent_moved = 0.15;
    /// Move only where the expected mean |cents| falls by this much ...
    units::Cents worth_moving{2.0};
    /// ... or the chance that moving is better is this high; 0: every move is worth it.
    double chance_of_better = 0.8;
    /// Of the slides moved together each is to fall by as much or be better moved than left, with the others
    /// as moved, with this chance.
    double chance_of_each = 0.6;
    /// Positions are multiples of this (or where a slide stands); of a slide whose position is unknown the
    /// change is. 0: any.
    units::Millimetres step{5.0};
    /// Most that the weighted mean lean may be sharp afterwards, where the slides allow it.
    units::Cents most_mean_sharp{2.0};
    /// How far out a hand slide stands in first when the notes are meant to be in tune, so that flat ones can
    /// be played further in; the ways' means are of a slide so much further out. 0 without a hand slide.
    units::Millimetres hand_slide_home{0.0};
    bool operator==(const SettingsConstants&) const = default;
};

/// A note whose usual way is brought to `lean` before all else, as near as the slides allow.
struct HeldNote {
    /// Index in `SettingsQuestion::notes`.
    std::size_t note = 0;
    units::Cents lean;
    bool operator==(const HeldNote&) const = default;
};

struct SettingsQuestion {
    acoustics::Tube tube;
    /// One for each slide of `tube`, same order.
    std::vector<QuestionSlide> slides;
    std::vector<QuestionNote> notes;
    SettingsConstants constants;
    /// Covariance of the ways' means, cents squared, by rows over all ways of all notes in order; empty:
    /// independent, each with its own spread. Its diagonal is the squared spreads.
    std::vector<double> covariance;
    /// The band's note, when the teacher wants it to read zero.
    std::optional<HeldNote> held_note;
    /// False: the readings do not suffice to move anything; every slide is left where it stands.
    bool may_move = true;
};

enum class Limit { none, least, travel };
enum class Advice { move, leave, fixed };

struct SlideAnswer {
    std::string slide;
    units::Millimetres now;
    units::Millimetres recommended;
    units::Millimetres least;
    units::Millimetres travel;
    Limit limit = Limit::none;
    Advice advice = Advice::leave;
    bool position_known = true;
    /// 90 % half-width of where it belongs, from what is known; empty when no weighted note uses it.
    std::optional<units::Millimetres> half_width;
    /// What a pull does to the slide's own note, as a size: the unit of the cost of moving.
    units::CentsPerMillimetre cents_per_mm;
    /// Chance that moving this slide too is better than leaving it, the others as they are to be moved.
    double chance_of_better = 0.0;
};

struct NoteAnswer {
    units::Pitch note;
    double weight = 0.0;
    /// The way chosen for the recommended positions, and the usual one (index 0 of the question's ways).
    PlayedNote way;
    bool is_usual = true;
    /// Expected lean with the slides where they stand (of the usual way) and as recommended (of the chosen
    /// way).
    units::Cents lean_before;
    units::Cents lean_after;
};

/// The answer. `recommended` equals `now` on every slide when nothing is worth moving.
struct SlideSettings {
    std::vector<SlideAnswer> slides;
    std::vector<NoteAnswer> notes;
    /// Value of the objective with the slides as they stand and as recommended, the best ways chosen each
    /// time.
    units::SquareCents objective_before;
    units::SquareCents objective_after;
    /// Weighted mean |lean| expected before and after, and the chance that after is better.
    units::Cents mean_before;
    units::Cents mean_after;
    /// Weighted mean lean, sign kept, expected after.
    units::Cents mean_lean_after;
    double chance_of_better = 0.0;
    SettingsConstants constants;
    [[nodiscard]] bool anything_moves() const;
};

/// The expected cost of a lean with belief N(mean, spread^2): E[x^2 (x>0) + a x^2 (x<0)] =
/// (mu^2+sigma^2)(Phi(z) + a Phi(-z)) + (1-a) mu sigma phi(z), z = mu/sigma; at sigma 0 its limit.
units::SquareCents expected_cost(units::Cents mean, units::Cents spread, double flat_weight);

/// The objective (docs/tuning.md) at given positions (same order as `question.slides`), best way chosen for
/// each note.
units::SquareCents objective(const SettingsQuestion& question, std::span<const units::Millimetres> positions);

/// Minimises the objective within the bounds over the slides whose move is worth it (the rule of
/// `SettingsConstants`): of those that the whole optimum moves, those that add too little to the others are
/// left out, the one that is missed least first. A slide that stands further in than its least may stay or go
/// out. Throws Refusal for a question that has no sense (no notes, least above travel, a slide standing
/// beyond its travel, no weight above zero, sizes that differ), naming the slide or note.
SlideSettings recommend(const SettingsQuestion& question);

}  // namespace lowledger::tuning
