#pragma once

#include <optional>
#include <vector>

#include "model/tuning/slide_problem.h"

namespace lowledger::tuning {

/// How much better one state of the slides is than another, for a set of notes.
struct Worth {
    /// Fall of the weighted mean of E|lean|.
    double fall = 0.0;
    /// Chance that the weighted cost is lower. The difference of costs is taken as normal with its exact mean
    /// and, for its variance, the mean gradient: exact for flat_weight 1 (Stein 1981, lemma 2), close
    /// otherwise.
    double chance = 0.5;
};

struct State {
    const Positions& at;
    const Choice& ways;
};

/// Weighted mean of E|lean|, and of the lean.
double mean_size(const SlideProblem& problem, const State& state);
double mean_lean(const SlideProblem& problem, const State& state);

/// Notes of weight that use slide `only` (in either state); all where it is empty. `covariance` as in
/// SettingsQuestion.
Worth worth(const SlideProblem& problem, const std::vector<double>& covariance, const State& before,
            const State& after, std::optional<std::size_t> only = std::nullopt);

/// How the best places hang on the leans, no limits and any position, the ways fixed: d* moves by
/// -(J'WJ)^-1 J'W x.
struct PlaceModel {
    std::size_t slides = 0;
    /// Ways in the order of the covariance.
    std::size_t ways = 0;
    /// Slides x ways by rows: (J'WJ)^-1 J'W.
    std::vector<double> shift;
    /// Slides x slides by rows: J'WJ.
    std::vector<double> curvature;
    /// False where no weighted note uses the slide or it cannot move.
    std::vector<bool> answers;
};
PlaceModel place_model(const SlideProblem& problem, const State& state);

/// Standard deviation of each slide's best place if everything were known; empty where it answers nothing.
std::vector<std::optional<double>> place_spread(const SlideProblem& problem,
                                                const std::vector<double>& covariance, const State& state);

/// What a reading is expected to take off the cost of not knowing: its covariance with the ways (`with_ways`)
/// moves the best places by A c; the regret saved is (A c)' J'WJ (A c)/2 over the reading's variance, halved
/// as the curvature is that of a square.
double regret_saved(const PlaceModel& model, const std::vector<double>& with_ways, double reading_variance);

}  // namespace lowledger::tuning
