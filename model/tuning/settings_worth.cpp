#include "model/tuning/settings_worth.h"

#include <Eigen/Dense>
#include <cmath>
#include <numbers>

#include "model/tuning/loss.h"

namespace lowledger::tuning {
namespace {

using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

Eigen::Index row(std::size_t i) {
    return static_cast<Eigen::Index>(i);
}

/// Index of the first way of each note in the order of the covariance, and their number.
std::vector<std::size_t> first_ways(const SlideProblem& problem) {
    std::vector<std::size_t> first{0};
    for (const SlideProblem::Note& note : problem.notes)
        first.push_back(first.back() + note.ways.size());
    return first;
}

/// What is known of the ways: their covariance, or each one's own spread.
class Belief {
  public:
    Belief(const SlideProblem& problem, const std::vector<double>& covariance)
        : problem_(problem), covariance_(covariance), first_(first_ways(problem)) {}

    [[nodiscard]] std::size_t index(std::size_t note, std::size_t way) const { return first_[note] + way; }
    [[nodiscard]] std::size_t size() const { return first_.back(); }

    /// g' C g.
    [[nodiscard]] double variance(const Eigen::VectorXd& g) const {
        if (covariance_.empty()) {
            double sum = 0.0;
            for (std::size_t n = 0; n < problem_.notes.size(); ++n) {
                for (std::size_t w = 0; w < problem_.notes[n].ways.size(); ++w) {
                    const double part = g[row(index(n, w))] * problem_.notes[n].ways[w].spread;
                    sum += part * part;
                }
            }
            return sum;
        }
        const Eigen::Map<const RowMajor> c(covariance_.data(), row(size()), row(size()));
        return g.dot(c * g);
    }

  private:
    const SlideProblem& problem_;
    const std::vector<double>& covariance_;
    std::vector<std::size_t> first_;
};

bool uses(const SlideProblem::Note& note, std::size_t before, std::size_t after, std::size_t slide) {
    return note.ways[before].pull[slide] != 0.0 || note.ways[after].pull[slide] != 0.0;
}

}  // namespace

double mean_size(const SlideProblem& problem, const State& state) {
    double sum = 0.0;
    for (std::size_t n = 0; n < problem.notes.size(); ++n) {
        const SlideProblem::Way& way = problem.notes[n].ways[state.ways[n]];
        sum += problem.notes[n].weight * expected_size_of(lean_at(way, problem, state.at), way.spread);
    }
    return sum;
}

double mean_lean(const SlideProblem& problem, const State& state) {
    double sum = 0.0;
    for (std::size_t n = 0; n < problem.notes.size(); ++n)
        sum += problem.notes[n].weight * lean_at(problem.notes[n].ways[state.ways[n]], problem, state.at);
    return sum;
}

Worth worth(const SlideProblem& problem, const std::vector<double>& covariance, const State& before,
            const State& after, std::optional<std::size_t> only) {
    const Belief belief(problem, covariance);
    Eigen::VectorXd gradient = Eigen::VectorXd::Zero(row(belief.size()));
    double cost = 0.0;
    double fall = 0.0;
    double weight = 0.0;
    for (std::size_t n = 0; n < problem.notes.size(); ++n) {
        const SlideProblem::Note& note = problem.notes[n];
        if (only && !uses(note, before.ways[n], after.ways[n], *only)) continue;
        const auto add = [&](const State& state, double sign) {
            const SlideProblem::Way& way = note.ways[state.ways[n]];
            const double lean = lean_at(way, problem, state.at);
            const ExpectedCost expected = expected_cost_of(lean, way.spread, problem.flat_weight);
            cost += sign * note.weight * expected.value;
            fall -= sign * note.weight * expected_size_of(lean, way.spread);
            gradient[row(belief.index(n, state.ways[n]))] += sign * note.weight * expected.slope;
        };
        add(after, 1.0);
        add(before, -1.0);
        weight += note.weight;
    }
    Worth result;
    if (weight > 0.0) result.fall = fall / weight;
    const double spread = std::sqrt(std::max(0.0, belief.variance(gradient)));
    if (spread > 0.0) {
        result.chance = normal_below(-cost / spread);
    } else if (cost != 0.0) {
        result.chance = cost < 0.0 ? 1.0 : 0.0;
    }
    return result;
}

PlaceModel place_model(const SlideProblem& problem, const State& state) {
    const std::vector<std::size_t> first = first_ways(problem);
    PlaceModel model;
    model.slides = problem.slides.size();
    model.ways = first.back();
    model.answers.assign(model.slides, false);
    const Eigen::Index slides = row(model.slides);
    Eigen::MatrixXd weighted = Eigen::MatrixXd::Zero(slides, row(model.ways));
    Eigen::MatrixXd curvature = Eigen::MatrixXd::Zero(slides, slides);
    for (std::size_t n = 0; n < problem.notes.size(); ++n) {
        const SlideProblem::Note& note = problem.notes[n];
        const SlideProblem::Way& way = note.ways[state.ways[n]];
        if (note.weight == 0.0) continue;
        Eigen::VectorXd slope = Eigen::VectorXd::Zero(slides);
        for (std::size_t i = 0; i < model.slides; ++i) {
            if (problem.slides[i].low == problem.slides[i].high || way.pull[i] == 0.0) continue;
            model.answers[i] = true;
            slope[row(i)] = -1200.0 * std::numbers::log2e * way.pull[i] / way.length_now;
        }
        const double lean = lean_at(way, problem, state.at);
        const double weight = note.weight * expected_cost_of(lean, way.spread, problem.flat_weight).curvature;
        curvature += weight * slope * slope.transpose();
        weighted.col(row(first[n] + state.ways[n])) = weight * slope;
    }
    // A little ridge picks the even share where two slides act on the same notes.
    Eigen::MatrixXd ridged = curvature;
    ridged.diagonal().array() += 1e-10 * std::max(curvature.trace(), 1e-300);
    const RowMajor shift = ridged.ldlt().solve(weighted);
    model.shift.assign(shift.data(), shift.data() + shift.size());
    model.curvature.assign(curvature.data(), curvature.data() + curvature.size());
    return model;
}

std::vector<std::optional<double>> place_spread(const SlideProblem& problem,
                                                const std::vector<double>& covariance, const State& state) {
    const PlaceModel model = place_model(problem, state);
    const Belief belief(problem, covariance);
    std::vector<std::optional<double>> spread(model.slides);
    for (std::size_t i = 0; i < model.slides; ++i) {
        if (!model.answers[i]) continue;
        const Eigen::Map<const Eigen::VectorXd> shift(model.shift.data() + i * model.ways, row(model.ways));
        spread[i] = std::sqrt(std::max(0.0, belief.variance(shift)));
    }
    return spread;
}

double regret_saved(const PlaceModel& model, const std::vector<double>& with_ways, double reading_variance) {
    const Eigen::Map<const RowMajor> shift(model.shift.data(), row(model.slides), row(model.ways));
    const Eigen::Map<const RowMajor> curvature(model.curvature.data(), row(model.slides), row(model.slides));
    const Eigen::Map<const Eigen::VectorXd> covariance(with_ways.data(), row(with_ways.size()));
    const Eigen::VectorXd moved = shift * covariance;
    return 0.5 * moved.dot(curvature * moved) / reading_variance;
}

}  // namespace lowledger::tuning
