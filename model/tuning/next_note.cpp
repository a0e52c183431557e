#include "model/tuning/next_note.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "model/tuning/follow_reading.h"
#include "model/tuning/loss.h"
#include "model/tuning/question.h"

namespace lowledger::tuning {
namespace {

/// Less than this, in cents squared, is not worth a note.
constexpr double least_worth = 0.01;

/// Gauss and Hermite's rule of five points for a standard normal (Abramowitz and Stegun 1964, table 25.10,
/// scaled).
struct Point {
    double at, weight;
};
constexpr std::array<Point, 5> points{{{-2.85697001387280565, 0.01125741132772069},
                                       {-1.35562617997426587, 0.22207592200561264},
                                       {0.0, 0.53333333333333333},
                                       {1.35562617997426587, 0.22207592200561264},
                                       {2.85697001387280565, 0.01125741132772069}}};

/// `least`, or what the lean costs in that way if that is less. No square counts less than the smaller side,
/// which tells most of those that are not less without an integral.
double cheaper(double least, const SlideProblem::Way& way, double lean, double spread, double flat_weight) {
    const double no_more = std::min(1.0, flat_weight) * (lean * lean + spread * spread) + way.penalty;
    if (no_more >= least) return least;
    return std::min(least, expected_cost_of(lean, spread, flat_weight).value + way.penalty);
}

/// What a reading of that covariance with the ways is expected to take off by letting each note be played the
/// way that it then shows to be best, the slides as recommended.
double choice_saved(const SlideProblem& problem, const Positions& at, const std::vector<double>& with_ways,
                    double reading_variance) {
    constexpr double none = std::numeric_limits<double>::infinity();
    double saved = 0.0;
    std::size_t first = 0;
    for (const SlideProblem::Note& note : problem.notes) {
        const std::size_t ways = note.ways.size();
        if (ways > 1 && note.weight > 0.0) {
            std::array<double, points.size()> least;
            least.fill(none);
            double now = none;
            for (std::size_t w = 0; w < ways; ++w) {
                const SlideProblem::Way& way = note.ways[w];
                const double lean = lean_at(way, problem, at);
                const double shift = with_ways[first + w] / std::sqrt(reading_variance);
                const double spread = std::sqrt(std::max(0.0, way.spread * way.spread - shift * shift));
                now = cheaper(now, way, lean, way.spread, problem.flat_weight);
                for (std::size_t k = 0; k < points.size(); ++k)
                    least[k] =
                        cheaper(least[k], way, lean + shift * points[k].at, spread, problem.flat_weight);
            }
            for (std::size_t k = 0; k < points.size(); ++k)
                now -= points[k].weight * least[k];
            saved += note.weight * std::max(0.0, now);
        }
        first += ways;
    }
    return saved;
}

}  // namespace

std::optional<NextNote> next_note(const TuningInputs& inputs, const Belief& belief,
                                  const SettingsQuestion& question, const SlideSettings& settings,
                                  const EnoughReadings& enough) {
    if (!enough.missing.empty())
        return NextNote{enough.missing.front().note, enough.missing.front().fingering};
    const SlideProblem problem = problem_of(question);
    const Chosen chosen = chosen_by(question, settings);
    const PlaceModel model = place_model(problem, {chosen.at, chosen.ways});
    const auto& notes = belief.profile.notes;
    const std::vector<std::size_t> ways = ways_of_question(inputs, belief.profile);
    std::optional<NextNote> best;
    double most = least_worth;
    for (std::size_t j = 0; j < notes.size(); ++j) {
        if (!inputs.kind.core_range.contains(notes[j].note)) continue;
        std::vector<double> with_ways;
        with_ways.reserve(ways.size());
        for (const std::size_t i : ways)
            with_ways.push_back(belief.slides_by_reading[i * notes.size() + j]);
        const double variance = belief.reading_variance[j];
        const double saved =
            regret_saved(model, with_ways, variance) + choice_saved(problem, chosen.at, with_ways, variance);
        if (saved > most) {
            most = saved;
            best = NextNote{notes[j].note, notes[j].fingering};
        }
    }
    return best;
}

}  // namespace lowledger::tuning
