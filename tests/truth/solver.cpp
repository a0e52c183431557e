#include "tests/truth/solver.h"

#include <algorithm>
#include <cmath>
#include <nlopt.h>

namespace lowledger::truth {
namespace {

double value(unsigned size, const double* at, double* /*gradient*/, void* data) {
    return (*static_cast<const tuning::PlainObjective*>(data))(std::vector<double>(at, at + size));
}

/// Starts spread evenly: multiples of the inverse powers of the root of x^(size+1) = x + 1 (M. Roberts's
/// generalisation of the golden ratio's sequence).
std::vector<double> start_of(const Bounds& bounds, int number) {
    const std::size_t size = bounds.low.size();
    double root = 2.0;
    for (int k = 0; k < 40; ++k)
        root = std::pow(1.0 + root, 1.0 / (static_cast<double>(size) + 1.0));
    std::vector<double> at(size);
    for (std::size_t i = 0; i < size; ++i) {
        const double part = std::fmod(0.5 + number * std::pow(root, -(static_cast<double>(i) + 1.0)), 1.0);
        at[i] = bounds.low[i] + part * (bounds.high[i] - bounds.low[i]);
    }
    return at;
}

}  // namespace

Bounds bounds_of(const tuning::SettingsQuestion& question) {
    Bounds bounds;
    for (const tuning::QuestionSlide& slide : question.slides) {
        bounds.low.push_back(slide.fixed ? slide.now.value() : std::min(slide.least, slide.now).value());
        bounds.high.push_back((slide.fixed ? slide.now : slide.travel).value());
    }
    return bounds;
}

double nlopt_best(const tuning::PlainObjective& objective, const Bounds& bounds, int starts) {
    const auto size = static_cast<unsigned>(bounds.low.size());
    tuning::PlainObjective copy = objective;
    double best = INFINITY;
    for (int start = 0; start < starts; ++start) {
        nlopt_opt solver = nlopt_create(NLOPT_LN_SBPLX, size);
        nlopt_set_lower_bounds(solver, bounds.low.data());
        nlopt_set_upper_bounds(solver, bounds.high.data());
        nlopt_set_min_objective(solver, value, &copy);
        nlopt_set_ftol_rel(solver, 1e-12);
        nlopt_set_maxeval(solver, 2000);
        std::vector<double> at = start_of(bounds, start);
        double found = INFINITY;
        nlopt_optimize(solver, at.data(), &found);
        nlopt_destroy(solver);
        best = std::min(best, found);
    }
    return best;
}

double least_of_all(const tuning::PlainObjective& objective, const std::vector<std::vector<double>>& places) {
    std::vector<std::size_t> number(places.size(), 0);
    std::vector<double> at;
    for (const std::vector<double>& of_slide : places)
        at.push_back(of_slide.front());
    double best = INFINITY;
    for (bool more = true; more;) {
        best = std::min(best, objective(at));
        std::size_t i = 0;
        for (; i < places.size(); ++i) {
            number[i] = (number[i] + 1) % places[i].size();
            at[i] = places[i][number[i]];
            if (number[i] != 0) break;
        }
        more = i < places.size();
    }
    return best;
}

std::vector<std::vector<double>> grid_of(const Bounds& bounds, int points) {
    std::vector<std::vector<double>> places;
    for (std::size_t i = 0; i < bounds.low.size(); ++i) {
        std::vector<double>& of_slide = places.emplace_back(1, bounds.low[i]);
        const double gap = (bounds.high[i] - bounds.low[i]) / (points - 1);
        for (int k = 1; k < points && gap > 0.0; ++k)
            of_slide.push_back(bounds.low[i] + k * gap);
    }
    return places;
}

std::vector<std::vector<double>> lattice_of(const tuning::SettingsQuestion& question) {
    const double step = question.constants.step.value();
    std::vector<std::vector<double>> places;
    for (const tuning::QuestionSlide& slide : question.slides) {
        std::vector<double>& of_slide = places.emplace_back(1, slide.now.value());
        if (slide.fixed) continue;
        for (int k = 0; k * step <= slide.travel.value() + 1e-9; ++k) {
            if (k * step >= slide.least.value() - 1e-9) of_slide.push_back(k * step);
        }
    }
    return places;
}

}  // namespace lowledger::truth
