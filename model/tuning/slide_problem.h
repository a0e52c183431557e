#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "model/tuning/settings.h"

namespace lowledger::tuning {

/// A question laid out for the search: bare numbers in cents and mm, since this is the numerical kernel.
struct SlideProblem {
    struct Way {
        double mean = 0.0;
        double spread = 0.0;
        double penalty = 0.0;
        double length_now = 0.0;
        /// Effective length for each mm of each slide; 0 where the slide does not act.
        std::vector<double> pull;
    };
    struct Note {
        /// Weights sum to 1.
        double weight = 0.0;
        std::vector<Way> ways;
    };
    struct Slide {
        double now = 0.0;
        double low = 0.0;
        double high = 0.0;
        /// Of a mm moved, cents squared.
        double cost = 0.0;
        /// Where it may stand, in order; empty: anywhere.
        std::vector<double> places;
    };
    std::vector<Note> notes;
    std::vector<Slide> slides;
    double flat_weight = 1.0;
    double most_mean_sharp = 0.0;
    /// The ways whose weighted mean lean is to be no more than that; empty: nothing caps it. Fixed
    /// beforehand, so that the cap says where slides go and never which fingering is taken.
    std::vector<std::size_t> mean_ways;
    std::optional<HeldNote> held_note;
};

/// Weight of a broken side condition, per cent squared: misses of a hundredth of a cent are all that is left.
inline constexpr double guard_weight = 1e4;

/// A way chosen for each note.
using Choice = std::vector<std::size_t>;
using Positions = std::vector<double>;

/// Lays a question out. The question must be valid.
SlideProblem problem_of(const SettingsQuestion& question);

/// Weighted mean lean of `mean_ways`; far below any cap where there are none.
double capped_mean(const SlideProblem& problem, const Positions& at);

/// Expected lean of a way with the slides at `at`: mean - 1200 log2(length/length now).
double lean_at(const SlideProblem::Way& way, const SlideProblem& problem, const Positions& at);

/// The best way of each note at `at`.
Choice best_ways(const SlideProblem& problem, const Positions& at);

/// The objective with the ways fixed.
double objective_at(const SlideProblem& problem, const Positions& at, const Choice& ways);

/// What the search minimises: the objective, and heavily what breaks a side condition (the weighted mean lean
/// of `mean_ways` more than `most_mean_sharp`; the held note off its lean).
double guarded_objective(const SlideProblem& problem, const Positions& at, const Choice& ways);

/// The same with the best way of each note at `at`; where it is `limit` or more, some number that is so too.
double best_guarded_objective(const SlideProblem& problem, const Positions& at, double limit);

/// Of what is weighted, without the cost of moving: value, slope and curvature (Gauss-Newton) by position,
/// with the side conditions.
struct LocalModel {
    std::vector<double> slope;
    /// slides x slides by rows.
    std::vector<double> curvature;
};
/// The local model at one place, for ways that differ little from one another.
class ModelAt {
  public:
    ModelAt(const SlideProblem& problem, const Positions& at, const Choice& ways);
    /// Plays a note another way.
    void change(std::size_t note, std::size_t from, std::size_t to);
    [[nodiscard]] LocalModel model() const;

  private:
    void add(std::size_t note, std::size_t of_note, double sign);
    struct Derivatives {
        double slope, curvature;
    };
    /// Of the lean by the effective length.
    [[nodiscard]] double slope_of(const SlideProblem::Way& way) const;
    /// Of a function of a lean whose gradient is `scale` times `pull`.
    static void add_to(LocalModel& model, const std::vector<double>& pull, double scale, Derivatives of);

    const SlideProblem& problem_;
    const Positions& at_;
    LocalModel weighted_;
    LocalModel guards_;
};

LocalModel local_model(const SlideProblem& problem, const Positions& at, const Choice& ways);

}  // namespace lowledger::tuning
