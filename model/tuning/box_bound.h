#pragma once

#include <cstddef>
#include <cstdint>
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
    /// Cost and lean of one way over a box.
    struct Range {
        double least_cost, most_cost, least_lean, most_lean;
    };
    /// slope . position + offset, below the cost of every open way of a note in the box.
    struct Plane {
        std::vector<double> slope;
        double offset = 0.0;
    };

    [[nodiscard]] Range range(const SlideProblem::Way& way, const SearchBox& box) const;
    void close_ways(SearchBox& box) const;
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

    /// The relaxed problem of the box at hand: convex. Notes with one open way, planes for the others.
    SlideProblem box_;
    std::vector<Plane> planes_;
    std::vector<std::size_t> settled_;
    std::vector<std::size_t> settled_way_;
    double open_mean_ = 0.0;
};

}  // namespace lowledger::tuning
