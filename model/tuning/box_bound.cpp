#include "model/tuning/box_bound.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <limits>
#include <numbers>

#include "model/tuning/loss.h"
#include "model/tuning/model_step.h"

namespace lowledger::tuning {
namespace {

constexpr double cents_of_log = 1200.0 * std::numbers::log2e;

bool is_open(std::uint32_t open, std::size_t way) {
    return ((open >> way) & 1U) != 0;
}

double length_of(const SlideProblem::Way& way, const SlideProblem& problem, const Positions& at) {
    double length = way.length_now;
    for (std::size_t i = 0; i < at.size(); ++i)
        length += way.pull[i] * (at[i] - problem.slides[i].now);
    return length;
}

double lean_of(const SlideProblem::Way& way, double length) {
    return way.mean - cents_of_log * std::log(length / way.length_now);
}

/// The expected cost of a way as a function of its length, and its slope by the length. Convex as long as
/// leans stay within 1000 cents: its second derivative has the sign of 1731 E'' + E', and E'' is at least 2
/// min(1, a).
struct ByLength {
    double value, slope;
};
ByLength cost_by_length(const SlideProblem::Way& way, double length, double flat_weight) {
    const ExpectedCost cost = expected_cost_of(lean_of(way, length), way.spread, flat_weight);
    return {cost.value + way.penalty, -cost.slope * cents_of_log / length};
}

/// The mean at which E[rho] of spread 1 is least: where its slope is 0. Found by Newton's steps; convex.
double least_mean(double flat_weight) {
    double mean = 0.0;
    for (int k = 0; k < 60; ++k) {
        const ExpectedCost cost = expected_cost_of(mean, 1.0, flat_weight);
        mean -= cost.slope / cost.curvature;
    }
    return mean;
}

}  // namespace

BoxBounding::BoxBounding(const SlideProblem& problem)
    : problem_(problem), least_at_(least_mean(problem.flat_weight)) {
    least_value_ = expected_cost_of(least_at_, 1.0, problem.flat_weight).value;
    box_.slides = problem.slides;
}

BoxBounding::Range BoxBounding::range(const SlideProblem::Way& way, const SearchBox& box) const {
    Range range{};
    range.most_lean = lean_of(way, length_of(way, problem_, box.low));
    range.least_lean = lean_of(way, length_of(way, problem_, box.high));
    const double sharp = expected_cost_of(range.most_lean, way.spread, problem_.flat_weight).value;
    const double flat = expected_cost_of(range.least_lean, way.spread, problem_.flat_weight).value;
    const double best_lean = least_at_ * way.spread;
    const bool inside = range.least_lean < best_lean && best_lean < range.most_lean;
    range.least_cost =
        way.penalty + (inside ? least_value_ * way.spread * way.spread : std::min(sharp, flat));
    range.most_cost = way.penalty + std::max(sharp, flat);
    return range;
}

void BoxBounding::close_ways(SearchBox& box) const {
    std::vector<std::vector<Range>> ranges(problem_.notes.size());
    double most_mean = 0.0;
    for (std::size_t n = 0; n < problem_.notes.size(); ++n) {
        const SlideProblem::Note& note = problem_.notes[n];
        if (note.weight == 0.0) continue;
        double most_lean = -std::numeric_limits<double>::infinity();
        for (std::size_t w = 0; w < note.ways.size(); ++w) {
            ranges[n].push_back(range(note.ways[w], box));
            if (is_open(box.open[n], w)) most_lean = std::max(most_lean, ranges[n].back().most_lean);
        }
        most_mean += note.weight * most_lean;
    }
    // Where the mean may be too sharp a dearer way can be wanted for its flatter lean.
    const bool mean_is_free = most_mean <= problem_.most_mean_sharp;
    for (std::size_t n = 0; n < problem_.notes.size(); ++n) {
        for (std::size_t w = 0; w < ranges[n].size(); ++w) {
            if (!is_open(box.open[n], w)) continue;
            for (std::size_t other = 0; other < ranges[n].size(); ++other) {
                const bool cheaper = ranges[n][other].most_cost < ranges[n][w].least_cost;
                const bool flatter = ranges[n][other].most_lean <= ranges[n][w].least_lean;
                if (other == w || !is_open(box.open[n], other) || !cheaper) continue;
                if (mean_is_free || flatter) box.open[n] &= ~(1U << w);
            }
        }
    }
}

BoxBounding::Plane BoxBounding::plane_under(const SlideProblem::Note& note, std::uint32_t open,
                                            const SearchBox& box) const {
    const std::size_t size = box.at.size();
    std::size_t best = 0;
    ByLength best_cost{std::numeric_limits<double>::infinity(), 0.0};
    for (std::size_t w = 0; w < note.ways.size(); ++w) {
        if (!is_open(open, w)) continue;
        const auto cost =
            cost_by_length(note.ways[w], length_of(note.ways[w], problem_, box.at), problem_.flat_weight);
        if (cost.value < best_cost.value) {
            best_cost = cost;
            best = w;
        }
    }
    Plane plane{std::vector<double>(size), 0.0};
    for (std::size_t i = 0; i < size; ++i)
        plane.slope[i] = best_cost.slope * note.ways[best].pull[i];
    // Under each way the highest of a few of its tangents, less the plane's slope, at its lowest corner.
    plane.offset = std::numeric_limits<double>::infinity();
    for (std::size_t w = 0; w < note.ways.size(); ++w) {
        if (!is_open(open, w)) continue;
        const SlideProblem::Way& way = note.ways[w];
        const double in = length_of(way, problem_, box.low);
        const double out = length_of(way, problem_, box.high);
        const std::array<double, 5> touches{length_of(way, problem_, box.at), in, out, 0.75 * in + 0.25 * out,
                                            0.25 * in + 0.75 * out};
        double highest = -std::numeric_limits<double>::infinity();
        for (const double touch : touches) {
            const auto cost = cost_by_length(way, touch, problem_.flat_weight);
            double lowest = cost.value + cost.slope * (way.length_now - touch);
            for (std::size_t i = 0; i < size; ++i) {
                const double slope = cost.slope * way.pull[i];
                lowest -= slope * problem_.slides[i].now;
                const double tilt = slope - plane.slope[i];
                lowest += std::min(tilt * box.low[i], tilt * box.high[i]);
            }
            highest = std::max(highest, lowest);
        }
        plane.offset = std::min(plane.offset, highest);
    }
    for (double& slope : plane.slope)
        slope *= note.weight;
    plane.offset *= note.weight;
    return plane;
}

void BoxBounding::relax(const SearchBox& box) {
    for (std::size_t i = 0; i < box_.slides.size(); ++i) {
        box_.slides[i].low = box.low[i];
        box_.slides[i].high = box.high[i];
    }
    planes_.clear();
    settled_.clear();
    settled_way_.clear();
    open_mean_ = 0.0;
    for (std::size_t n = 0; n < problem_.notes.size(); ++n) {
        const SlideProblem::Note& note = problem_.notes[n];
        if (note.weight == 0.0) continue;
        if (std::has_single_bit(box.open[n])) {
            settled_.push_back(n);
            settled_way_.push_back(static_cast<std::size_t>(std::countr_zero(box.open[n])));
            continue;
        }
        planes_.push_back(plane_under(note, box.open[n], box));
        double least_lean = std::numeric_limits<double>::infinity();
        for (std::size_t w = 0; w < note.ways.size(); ++w) {
            if (!is_open(box.open[n], w)) continue;
            const SlideProblem::Way& way = note.ways[w];
            least_lean = std::min(least_lean, lean_of(way, length_of(way, problem_, box.high)));
        }
        open_mean_ += note.weight * least_lean;
    }
}

BoxBounding::Local BoxBounding::local(const Positions& at) const {
    const std::size_t size = at.size();
    Local here{0.0, {std::vector<double>(size, 0.0), std::vector<double>(size * size, 0.0)}};
    const auto add = [&](const std::vector<double>& pull, double slope, double curvature) {
        for (std::size_t i = 0; i < size; ++i) {
            if (pull[i] == 0.0) continue;
            here.model.slope[i] += slope * pull[i];
            for (std::size_t j = 0; j < size; ++j)
                here.model.curvature[i * size + j] += curvature * pull[i] * pull[j];
        }
    };
    double mean = open_mean_;
    std::vector<double> mean_slope(size, 0.0);
    for (std::size_t k = 0; k < settled_.size(); ++k) {
        const SlideProblem::Note& note = problem_.notes[settled_[k]];
        const SlideProblem::Way& way = note.ways[settled_way_[k]];
        const double length = length_of(way, problem_, at);
        const double lean = lean_of(way, length);
        const ExpectedCost cost = expected_cost_of(lean, way.spread, problem_.flat_weight);
        const double by_length = -cents_of_log / length;
        here.value += note.weight * (cost.value + way.penalty);
        add(way.pull, note.weight * cost.slope * by_length,
            note.weight * cost.curvature * by_length * by_length);
        mean += note.weight * lean;
        for (std::size_t i = 0; i < size; ++i)
            mean_slope[i] += note.weight * by_length * way.pull[i];
    }
    for (const Plane& plane : planes_) {
        here.value += plane.offset;
        for (std::size_t i = 0; i < size; ++i) {
            here.value += plane.slope[i] * at[i];
            here.model.slope[i] += plane.slope[i];
        }
    }
    if (const double over = mean - problem_.most_mean_sharp; over > 0.0) {
        here.value += guard_weight * over * over;
        add(mean_slope, 2.0 * guard_weight * over, 2.0 * guard_weight);
    }
    if (problem_.held_note) {
        const SlideProblem::Way& way = problem_.notes[problem_.held_note->note].ways.front();
        const double length = length_of(way, problem_, at);
        const double off = lean_of(way, length) - problem_.held_note->lean.value();
        const double by_length = -cents_of_log / length;
        here.value += guard_weight * off * off;
        add(way.pull, 2.0 * guard_weight * off * by_length, 2.0 * guard_weight * by_length * by_length);
    }
    return here;
}

double BoxBounding::certain(const Local& here, const Positions& at) const {
    double bound = here.value;
    for (std::size_t i = 0; i < at.size(); ++i) {
        const SlideProblem::Slide& slide = box_.slides[i];
        const auto lowered = [&](double place) {
            return here.model.slope[i] * (place - at[i]) + slide.cost * std::abs(place - slide.now);
        };
        bound += std::min(
            {lowered(slide.low), lowered(slide.high), lowered(std::clamp(slide.now, slide.low, slide.high))});
    }
    return bound;
}

void BoxBounding::descend(Positions& at) const {
    constexpr int most_steps = 40;
    constexpr double still = 1e-9;
    const auto whole = [&](const Positions& place) {
        double value = local(place).value;
        for (std::size_t i = 0; i < place.size(); ++i)
            value += box_.slides[i].cost * std::abs(place[i] - box_.slides[i].now);
        return value;
    };
    double value = whole(at);
    for (int k = 0; k < most_steps; ++k) {
        const Positions step = model_step(box_, local(at).model, at);
        if (std::ranges::all_of(step, [](double part) { return std::abs(part) < still; })) return;
        bool lower = false;
        for (double part = 1.0; part > 1e-4 && !lower; part *= 0.5) {
            Positions to(at);
            for (std::size_t i = 0; i < to.size(); ++i)
                to[i] = std::clamp(at[i] + part * step[i], box_.slides[i].low, box_.slides[i].high);
            const double there = whole(to);
            lower = there < value;
            if (lower) {
                at = std::move(to);
                value = there;
            }
        }
        if (!lower) return;
    }
}

std::vector<double> BoxBounding::slack_at(const SearchBox& box, const Positions& at) const {
    std::vector<double> slack(problem_.notes.size(), 0.0);
    std::size_t plane = 0;
    for (std::size_t n = 0; n < problem_.notes.size(); ++n) {
        const SlideProblem::Note& note = problem_.notes[n];
        if (note.weight == 0.0 || std::has_single_bit(box.open[n])) continue;
        double best = std::numeric_limits<double>::infinity();
        for (std::size_t w = 0; w < note.ways.size(); ++w) {
            if (!is_open(box.open[n], w)) continue;
            const double length = length_of(note.ways[w], problem_, at);
            best = std::min(best, cost_by_length(note.ways[w], length, problem_.flat_weight).value);
        }
        const Plane& under = planes_[plane++];
        double below = under.offset;
        for (std::size_t i = 0; i < at.size(); ++i)
            below += under.slope[i] * at[i];
        slack[n] = std::max(0.0, note.weight * best - below);
    }
    return slack;
}

std::vector<double> BoxBounding::bound(SearchBox& box) {
    for (std::size_t i = 0; i < box.at.size(); ++i)
        box.at[i] = std::clamp(box.at[i], box.low[i], box.high[i]);
    close_ways(box);
    // Planes that touch where the last bound was lowest lie closer there; a few rounds settle.
    constexpr int most_rounds = 4;
    std::vector<double> slack;
    for (int round = 0; round < most_rounds; ++round) {
        relax(box);
        descend(box.at);
        const double bound = certain(local(box.at), box.at);
        const bool higher = bound > box.bound + 1e-9 * std::abs(bound);
        box.bound = std::max(box.bound, bound);
        slack = slack_at(box, box.at);
        if (planes_.empty() || (round > 0 && !higher)) break;
    }
    return slack;
}

}  // namespace lowledger::tuning
