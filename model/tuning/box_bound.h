#pragma once

#include <cstddef>
#include <cstdint>
#include <variant>
#include <vector>

#include "model/tuning/slide_problem.h"

namespace lowledger::tuning {

/// A part of the search: positions between two corners, and for each note the ways still open (bit w for way
/// w).
struct SearchBox {
    Positions low;
    Positions high;
    std::vector<std::uint32_t> open;
    /// Where the lower bound was found lowest; where the next bound begins.
    Positions at;
    /// No choice in the box has a lower guarded objective.
    double bound = 0.0;
};

/// Bounds boxes of one problem. Keeps what only depends on the problem.
class BoxBounding {
  public:
    explicit BoxBounding(const SlideProblem& problem);

    /// Closes ways of `box` that cannot be best in it, raises its `bound` to what is certain, and moves its
    /// `at` to where that lies. Returns, for each note with more than one open way, how far the plane under
    /// its ways lies below the best of them there, weighted; 0 for the others.
    std::vector<double> bound(SearchBox& box);

  private:
    /// The cost of one way over a box.
    struct Range {
        double least_cost, most_cost;
    };
    /// slope . position + offset, below the cost of every open way of a note in the box.
    struct Plane {
        std::vector<double> slope;
        double offset = 0.0;
    };
    /// The leans of a note's open ways lie between slope . position + flat and slope . position + sharp in
    /// the box. The cost of the lean in that band which costs least, at the least spread and penalty, lies
    /// below all of them, and is convex.
    struct Band {
        std::vector<double> slope;
        double flat = 0.0;
        double sharp = 0.0;
        double spread = 0.0;
        double penalty = 0.0;
        double weight = 0.0;
    };
    /// Whichever of the two lies higher where the box's bound is sought.
    using Under = std::variant<Plane, Band>;
    /// Of a function of the positions: its value, and slope and curvature along `direction`.
    struct Along {
        double value = 0.0;
        double slope = 0.0;
        double curvature = 0.0;
    };

    [[nodiscard]] Range range(const SlideProblem::Way& way, const SearchBox& box) const;
    void close_ways(SearchBox& box) const;
    [[nodiscard]] Band band_under(const SlideProblem::Note& note, std::uint32_t open,
                                  const SearchBox& box) const;
    [[nodiscard]] Along value_of(const Band& band, const Positions& at) const;
    [[nodiscard]] double value_of(const Under& under, const Positions& at) const;
    [[nodiscard]] Plane plane_under(const SlideProblem::Note& note, std::uint32_t open,
                                    const SearchBox& box) const;
    void relax(const SearchBox& box);
    struct Local {
        double value = 0.0;
        LocalModel model;
    };
    [[nodiscard]] Local local(const Positions& at) const;
    void descend(Positions& at) const;
    [[nodiscard]] std::vector<double> slack_at(const SearchBox& box, const Positions& at) const;
    [[nodiscard]] double certain(const Local& here, const Positions& at) const;

    const SlideProblem& problem_;
    /// Where E[rho] of spread 1 is least, and that least value.
    double least_at_ = 0.0;
    double least_value_ = 0.0;

    /// The relaxed problem of the box at hand: convex. Notes with one open way, what lies under the ways for
    /// the others.
    SlideProblem box_;
    std::vector<Under> unders_;
    std::vector<std::size_t> settled_;
    std::vector<std::size_t> settled_way_;
};

}  // namespace lowledger::tuning
