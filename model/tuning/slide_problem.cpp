#include "model/tuning/slide_problem.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "model/tuning/loss.h"

namespace lowledger::tuning {
namespace {

/// Cents for a relative change of length: 1200 log2(e).
constexpr double cents_of_log = 1200.0 * std::numbers::log2e;

double length_at(const SlideProblem::Way& way, const SlideProblem& problem, const Positions& at) {
    double length = way.length_now;
    for (std::size_t i = 0; i < at.size(); ++i)
        length += way.pull[i] * (at[i] - problem.slides[i].now);
    return length;
}

SlideProblem::Way way_of(const PlayedNote& played, const SettingsQuestion& question,
                         const std::vector<units::Millimetres>& now) {
    SlideProblem::Way way;
    way.mean = played.mean.value();
    way.spread = played.spread.value();
    way.penalty = played.penalty.value();
    way.length_now = acoustics::sounding_length(question.tube, played.fingering.valves, now).value();
    // A hand slide in its plain position (`horns::plain_position`) lengthens the horn as designed.
    if (played.fingering.position > 1) {
        way.length_now += acoustics::designed_length(question.tube, played.fingering.valves).value() *
                          (std::exp2((played.fingering.position - 1) / 12.0) - 1.0);
    }
    for (const acoustics::SlideTube& slide : question.tube.slides)
        way.pull.push_back(acoustics::acts(slide, played.fingering.valves) ? slide.legs * slide.bore : 0.0);
    return way;
}

/// Where a slide may stand: multiples of the step between its limits, and where it stands. Of a slide whose
/// position is unknown the change is the multiple.
std::vector<double> places_of(const QuestionSlide& slide, const SlideProblem::Slide& bounds, double step) {
    if (step <= 0.0 || slide.fixed) return {};
    const double origin = slide.position_known ? 0.0 : bounds.now;
    std::vector<double> places{bounds.now};
    constexpr double rounding = 1e-9;
    const double least = slide.least.value();
    const auto first = static_cast<long>(std::ceil((least - origin) / step - rounding));
    const auto last = static_cast<long>(std::floor((bounds.high - origin) / step + rounding));
    for (long k = first; k <= last; ++k)
        places.push_back(origin + static_cast<double>(k) * step);
    std::ranges::sort(places);
    const auto same = [](double a, double b) { return std::abs(a - b) < rounding; };
    places.erase(std::unique(places.begin(), places.end(), same), places.end());
    return places;
}

double moving_cost(const SlideProblem& problem, const Positions& at) {
    double cost = 0.0;
    for (std::size_t i = 0; i < at.size(); ++i)
        cost += problem.slides[i].cost * std::abs(at[i] - problem.slides[i].now);
    return cost;
}

/// Cents on the slide's own note for each mm.
double own_slope(const acoustics::Tube& tube, const acoustics::SlideTube& slide) {
    const acoustics::ValveSet own = slide.valve ? acoustics::ValveSet{*slide.valve} : acoustics::ValveSet{};
    return std::abs(acoustics::pull_slope(slide, own, acoustics::designed_length(tube, own)).value());
}

const SlideProblem::Way& held_way(const SlideProblem& problem) {
    return problem.notes[problem.held_note->note].ways.front();
}

/// No more than the expected cost of a lean, without its integrals: no square counts less than `least_side`.
double cost_at_least(double lean, double spread, double least_side) {
    return least_side * (lean * lean + spread * spread);
}

double held_off(const SlideProblem& problem, const Positions& at) {
    return lean_at(held_way(problem), problem, at) - problem.held_note->lean.value();
}

}  // namespace

SlideProblem problem_of(const SettingsQuestion& question) {
    SlideProblem problem;
    problem.flat_weight = question.constants.flat_weight;
    problem.most_mean_sharp = question.constants.most_mean_sharp.value();
    problem.held_note = question.held_note;
    std::vector<units::Millimetres> now;
    for (std::size_t i = 0; i < question.slides.size(); ++i) {
        const QuestionSlide& slide = question.slides[i];
        now.push_back(slide.now);
        SlideProblem::Slide bounds;
        bounds.now = slide.now.value();
        bounds.low = slide.fixed ? bounds.now : std::min(slide.least.value(), bounds.now);
        bounds.high = slide.fixed ? bounds.now : slide.travel.value();
        bounds.cost =
            question.constants.cost_per_cent_moved * own_slope(question.tube, question.tube.slides[i]);
        bounds.places = places_of(slide, bounds, question.constants.step.value());
        problem.slides.push_back(bounds);
    }
    double total = 0.0;
    for (const QuestionNote& note : question.notes)
        total += note.weight;
    for (const QuestionNote& note : question.notes) {
        SlideProblem::Note laid{note.weight / total, {}};
        for (const PlayedNote& way : note.ways)
            laid.ways.push_back(way_of(way, question, now));
        problem.notes.push_back(laid);
    }
    return problem;
}

double lean_at(const SlideProblem::Way& way, const SlideProblem& problem, const Positions& at) {
    return way.mean - cents_of_log * std::log(length_at(way, problem, at) / way.length_now);
}

Choice best_ways(const SlideProblem& problem, const Positions& at) {
    Choice choice(problem.notes.size(), 0);
    const double least_side = std::min(1.0, problem.flat_weight);
    for (std::size_t n = 0; n < problem.notes.size(); ++n) {
        const auto& ways = problem.notes[n].ways;
        if (ways.size() == 1) continue;
        double best = 0.0;
        for (std::size_t w = 0; w < ways.size(); ++w) {
            const double lean = lean_at(ways[w], problem, at);
            if (w > 0 && cost_at_least(lean, ways[w].spread, least_side) + ways[w].penalty >= best) continue;
            const double cost =
                expected_cost_of(lean, ways[w].spread, problem.flat_weight).value + ways[w].penalty;
            if (w == 0 || cost < best) {
                best = cost;
                choice[n] = w;
            }
        }
    }
    return choice;
}

double objective_at(const SlideProblem& problem, const Positions& at, const Choice& ways) {
    double sum = moving_cost(problem, at);
    for (std::size_t n = 0; n < problem.notes.size(); ++n) {
        const SlideProblem::Note& note = problem.notes[n];
        if (note.weight == 0.0) continue;
        const SlideProblem::Way& way = note.ways[ways[n]];
        const double lean = lean_at(way, problem, at);
        sum += note.weight * (expected_cost_of(lean, way.spread, problem.flat_weight).value + way.penalty);
    }
    return sum;
}

double capped_mean(const SlideProblem& problem, const Positions& at) {
    if (problem.mean_ways.empty()) return -std::numeric_limits<double>::infinity();
    double mean = 0.0;
    for (std::size_t n = 0; n < problem.notes.size(); ++n) {
        const SlideProblem::Note& note = problem.notes[n];
        if (note.weight != 0.0) mean += note.weight * lean_at(note.ways[problem.mean_ways[n]], problem, at);
    }
    return mean;
}

namespace {

/// What breaks the side conditions, weighted.
double guard(const SlideProblem& problem, const Positions& at) {
    const double over = std::max(0.0, capped_mean(problem, at) - problem.most_mean_sharp);
    double squares = over * over;
    if (problem.held_note) {
        const double off = held_off(problem, at);
        squares += off * off;
    }
    return guard_weight * squares;
}

}  // namespace

double guarded_objective(const SlideProblem& problem, const Positions& at, const Choice& ways) {
    return objective_at(problem, at, ways) + guard(problem, at);
}

double best_guarded_objective(const SlideProblem& problem, const Positions& at, double limit) {
    double sum = moving_cost(problem, at) + guard(problem, at);
    const double least_side = std::min(1.0, problem.flat_weight);
    for (const SlideProblem::Note& note : problem.notes) {
        if (note.weight == 0.0) continue;
        // What a note adds is never negative.
        if (sum >= limit) return sum;
        double best = std::numeric_limits<double>::infinity();
        for (const SlideProblem::Way& way : note.ways) {
            const double lean = lean_at(way, problem, at);
            if (cost_at_least(lean, way.spread, least_side) + way.penalty >= best) continue;
            best =
                std::min(best, expected_cost_of(lean, way.spread, problem.flat_weight).value + way.penalty);
        }
        sum += note.weight * best;
    }
    return sum;
}

ModelAt::ModelAt(const SlideProblem& problem, const Positions& at, const Choice& ways)
    : problem_(problem),
      at_(at),
      weighted_{std::vector<double>(at.size(), 0.0), std::vector<double>(at.size() * at.size(), 0.0)},
      guards_(weighted_) {
    for (std::size_t n = 0; n < problem.notes.size(); ++n)
        add(n, ways[n], 1.0);
    const double over = capped_mean(problem, at) - problem.most_mean_sharp;
    if (over > 0.0) {
        std::vector<double> gradient(at.size(), 0.0);
        for (std::size_t n = 0; n < problem.notes.size(); ++n) {
            const SlideProblem::Way& way = problem.notes[n].ways[problem.mean_ways[n]];
            const double slope = slope_of(way);
            for (std::size_t i = 0; i < gradient.size(); ++i)
                gradient[i] += problem.notes[n].weight * (slope * way.pull[i]);
        }
        add_to(guards_, gradient, 1.0, {2.0 * guard_weight * over, 2.0 * guard_weight});
    }
    if (problem.held_note) {
        add_to(guards_, held_way(problem).pull, slope_of(held_way(problem)),
               {2.0 * guard_weight * held_off(problem, at), 2.0 * guard_weight});
    }
}

void ModelAt::change(std::size_t note, std::size_t from, std::size_t to) {
    add(note, from, -1.0);
    add(note, to, 1.0);
}

LocalModel ModelAt::model() const {
    LocalModel model = weighted_;
    for (std::size_t i = 0; i < model.slope.size(); ++i)
        model.slope[i] += guards_.slope[i];
    for (std::size_t i = 0; i < model.curvature.size(); ++i)
        model.curvature[i] += guards_.curvature[i];
    return model;
}

void ModelAt::add(std::size_t note, std::size_t of_note, double sign) {
    const double weight = sign * problem_.notes[note].weight;
    if (weight == 0.0) return;
    const SlideProblem::Way& way = problem_.notes[note].ways[of_note];
    const double lean = lean_at(way, problem_, at_);
    const ExpectedCost cost = expected_cost_of(lean, way.spread, problem_.flat_weight);
    add_to(weighted_, way.pull, slope_of(way), {weight * cost.slope, weight * cost.curvature});
}

double ModelAt::slope_of(const SlideProblem::Way& way) const {
    return -cents_of_log / length_at(way, problem_, at_);
}

void ModelAt::add_to(LocalModel& model, const std::vector<double>& pull, double scale, Derivatives of) {
    const std::size_t size = pull.size();
    for (std::size_t i = 0; i < size; ++i) {
        if (pull[i] == 0.0) continue;
        const double gradient = scale * pull[i];
        model.slope[i] += of.slope * gradient;
        for (std::size_t j = 0; j < size; ++j)
            model.curvature[i * size + j] += of.curvature * gradient * (scale * pull[j]);
    }
}

LocalModel local_model(const SlideProblem& problem, const Positions& at, const Choice& ways) {
    return ModelAt(problem, at, ways).model();
}

}  // namespace lowledger::tuning
