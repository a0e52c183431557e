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
    const double most_lean = lean_of(way, length_of(way, problem_, box.low));
    const double least_lean = lean_of(way, length_of(way, problem_, box.high));
    const double sharp = expected_cost_of(most_lean, way.spread, problem_.flat_weight).value;
    const double flat = expected_cost_of(least_lean, way.spread, problem_.flat_weight).value;
    const double best_lean = least_at_ * way.spread;
    const bool inside = least_lean < best_lean && best_lean < most_lean;
    range.least_cost =
        way.penalty + (inside ? least_value_ * way.spread * way.spread : std::min(sharp, flat));
    range.most_cost = way.penalty + std::max(sharp, flat);
    return range;
}

void BoxBounding::close_ways(SearchBox& box) const {
    std::vector<Range> ranges;
    for (std::size_t n = 0; n < problem_.notes.size(); ++n) {
        const SlideProblem::Note& note = problem_.notes[n];
        if (note.weight == 0.0 || std::has_single_bit(box.open[n])) continue;
        ranges.clear();
        double cheapest_most = std::numeric_limits<double>::infinity();
        for (std::size_t w = 0; w < note.ways.size(); ++w) {
            ranges.push_back(is_open(box.open[n], w) ? range(note.ways[w], box) : Range{});
            if (is_open(box.open[n], w)) cheapest_most = std::min(cheapest_most, ranges.back().most_cost);
        }
        for (std::size_t w = 0; w < note.ways.size(); ++w)
            if (is_open(box.open[n], w) && ranges[w].least_cost > cheapest_most) box.open[n] &= ~(1U << w);
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

BoxBounding::Band BoxBounding::band_under(const SlideProblem::Note& note, std::uint32_t open,
                                          const SearchBox& box) const {
    const std::size_t size = box.at.size();
    Band band;
    band.slope.assign(size, 0.0);
    band.weight = note.weight;
    band.spread = band.penalty = std::numeric_limits<double>::infinity();
    double ways = 0.0;
    for (std::size_t w = 0; w < note.ways.size(); ++w) {
        if (!is_open(open, w)) continue;
        const SlideProblem::Way& way = note.ways[w];
        band.spread = std::min(band.spread, way.spread);
        band.penalty = std::min(band.penalty, way.penalty);
        const double touch = 0.5 * (length_of(way, problem_, box.low) + length_of(way, problem_, box.high));
        for (std::size_t i = 0; i < size; ++i)
            band.slope[i] -= cents_of_log / touch * way.pull[i];
        ways += 1.0;
    }
    for (double& slope : band.slope)
        slope /= ways;
    band.flat = std::numeric_limits<double>::infinity();
    band.sharp = -std::numeric_limits<double>::infinity();
    for (std::size_t w = 0; w < note.ways.size(); ++w) {
        if (!is_open(open, w)) continue;
        const SlideProblem::Way& way = note.ways[w];
        const double in = length_of(way, problem_, box.low);
        const double out = length_of(way, problem_, box.high);
        const double touch = 0.5 * (in + out);
        const double by_length = -cents_of_log / touch;
        // A lean is convex in the length: its tangent lies below, and most below at an end.
        const auto tangent = [&](double length) {
            return lean_of(way, touch) + by_length * (length - touch);
        };
        const double above = std::max(lean_of(way, in) - tangent(in), lean_of(way, out) - tangent(out));
        double least = tangent(way.length_now);
        double most = least;
        for (std::size_t i = 0; i < size; ++i) {
            const double slope = by_length * way.pull[i];
            const double tilt = slope - band.slope[i];
            least += std::min(tilt * box.low[i], tilt * box.high[i]) - slope * problem_.slides[i].now;
            most += std::max(tilt * box.low[i], tilt * box.high[i]) - slope * problem_.slides[i].now;
        }
        band.flat = std::min(band.flat, least);
        band.sharp = std::max(band.sharp, most + above);
    }
    return band;
}

BoxBounding::Along BoxBounding::value_of(const Band& band, const Positions& at) const {
    double lean = 0.0;
    for (std::size_t i = 0; i < at.size(); ++i)
        lean += band.slope[i] * at[i];
    const double best = least_at_ * band.spread;
    if (lean + band.flat <= best && best <= lean + band.sharp)
        return {band.weight * (least_value_ * band.spread * band.spread + band.penalty), 0.0, 0.0};
    const double nearest = lean + (lean + band.flat > best ? band.flat : band.sharp);
    const ExpectedCost cost = expected_cost_of(nearest, band.spread, problem_.flat_weight);
    return {band.weight * (cost.value + band.penalty), band.weight * cost.slope,
            band.weight * cost.curvature};
}

double BoxBounding::value_of(const Under& under, const Positions& at) const {
    if (const auto* band = std::get_if<Band>(&under)) return value_of(*band, at).value;
    const auto& plane = std::get<Plane>(under);
    double value = plane.offset;
    for (std::size_t i = 0; i < at.size(); ++i)
        value += plane.slope[i] * at[i];
    return value;
}

void BoxBounding::relax(const SearchBox& box) {
    for (std::size_t i = 0; i < box_.slides.size(); ++i) {
        box_.slides[i].low = box.low[i];
        box_.slides[i].high = box.high[i];
    }
    unders_.clear();
    settled_.clear();
    settled_way_.clear();
    for (std::size_t n = 0; n < problem_.notes.size(); ++n) {
        const SlideProblem::Note& note = problem_.notes[n];
        if (note.weight == 0.0) continue;
        if (std::has_single_bit(box.open[n])) {
            settled_.push_back(n);
            settled_way_.push_back(static_cast<std::size_t>(std::countr_zero(box.open[n])));
            continue;
        }
        const Under plane = plane_under(note, box.open[n], box);
        const Under band = band_under(note, box.open[n], box);
        unders_.push_back(value_of(plane, box.at) > value_of(band, box.at) ? plane : band);
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
    }
    for (const Under& under : unders_) {
        if (const auto* band = std::get_if<Band>(&under)) {
            const Along along = value_of(*band, at);
            here.value += along.value;
            add(band->slope, along.slope, along.curvature);
            continue;
        }
        const auto& plane = std::get<Plane>(under);
        here.value += value_of(under, at);
        for (std::size_t i = 0; i < size; ++i)
            here.model.slope[i] += plane.slope[i];
    }
    if (const double over = capped_mean(problem_, at) - problem_.most_mean_sharp; over > 0.0) {
        std::vector<double> mean_slope(size, 0.0);
        for (std::size_t n = 0; n < problem_.notes.size(); ++n) {
            const SlideProblem::Way& way = problem_.notes[n].ways[problem_.mean_ways[n]];
            const double by_length = -cents_of_log / length_of(way, problem_, at);
            for (std::size_t i = 0; i < size; ++i)
                mean_slope[i] += problem_.notes[n].weight * by_length * way.pull[i];
        }
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
    std::size_t next = 0;
    for (std::size_t n = 0; n < problem_.notes.size(); ++n) {
        const SlideProblem::Note& note = problem_.notes[n];
        if (note.weight == 0.0 || std::has_single_bit(box.open[n])) continue;
        double best = std::numeric_limits<double>::infinity();
        for (std::size_t w = 0; w < note.ways.size(); ++w) {
            if (!is_open(box.open[n], w)) continue;
            const double length = length_of(note.ways[w], problem_, at);
            best = std::min(best, cost_by_length(note.ways[w], length, problem_.flat_weight).value);
        }
        slack[n] = std::max(0.0, note.weight * best - value_of(unders_[next++], at));
    }
    return slack;
}

std::vector<double> BoxBounding::bound(SearchBox& box) {
    for (std::size_t i = 0; i < box.at.size(); ++i)
        box.at[i] = std::clamp(box.at[i], box.low[i], box.high[i]);
    close_ways(box);
    // Planes that touch where the last bound was lowest lie closer there; a few rounds settle.
    constexpr int most_rounds = 2;
    std::vector<double> slack;
    for (int round = 0; round < most_rounds; ++round) {
        relax(box);
        descend(box.at);
        const double bound = certain(local(box.at), box.at);
        const bool higher = bound > box.bound + 1e-9 * std::abs(bound);
        box.bound = std::max(box.bound, bound);
        slack = slack_at(box, box.at);
        if (unders_.empty() || (round > 0 && !higher)) break;
    }
    return slack;
}

}  // namespace lowledger::tuning
