// The optimum of the settings against NLopt (S. G. Johnson, The NLopt nonlinear-optimization package): an
// independent solver on an objective that is written out again here.
#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <nlopt.h>

#include "model/tuning/slide_search.h"
#include "tests/model/tuning/random_question.h"

namespace lowledger::tuning {
namespace {

struct Bounds {
    std::vector<double> low, high;
};

Bounds bounds_of(const SettingsQuestion& question) {
    Bounds bounds;
    for (const QuestionSlide& slide : question.slides) {
        bounds.low.push_back((slide.fixed ? slide.now : slide.least).value());
        bounds.high.push_back((slide.fixed ? slide.now : slide.travel).value());
    }
    return bounds;
}

double nlopt_value(unsigned size, const double* at, double* /*gradient*/, void* data) {
    return (*static_cast<const PlainObjective*>(data))(std::vector<double>(at, at + size));
}

/// Best of several starts of Rowan's subplex method within the bounds.
double nlopt_best(const SettingsQuestion& question, PlainObjective& objective) {
    const Bounds bounds = bounds_of(question);
    const std::size_t size = bounds.low.size();
    double best = INFINITY;
    for (int start = 0; start < 6; ++start) {
        nlopt_opt solver = nlopt_create(NLOPT_LN_SBPLX, static_cast<unsigned>(size));
        nlopt_set_lower_bounds(solver, bounds.low.data());
        nlopt_set_upper_bounds(solver, bounds.high.data());
        nlopt_set_min_objective(solver, nlopt_value, &objective);
        nlopt_set_ftol_rel(solver, 1e-12);
        nlopt_set_maxeval(solver, 1500);
        std::vector<double> at = positions_now(question);
        for (std::size_t i = 0; i < size && start > 0; ++i) {
            const double part = std::fmod(0.618 * start + 0.31 * static_cast<double>(i), 1.0);
            at[i] = bounds.low[i] + part * (bounds.high[i] - bounds.low[i]);
        }
        double value = INFINITY;
        nlopt_optimize(solver, at.data(), &value);
        nlopt_destroy(solver);
        best = std::min(best, value);
    }
    return best;
}

void never_worse_than_nlopt(unsigned first, unsigned count) {
    for (unsigned seed = first; seed < first + count; ++seed) {
        const SettingsQuestion question = random_question(seed);
        PlainObjective objective(question);
        const SlideSettings settings = recommend(question);
        const double ours = objective(positions_recommended(settings));
        EXPECT_NEAR(settings.objective_after.value(), ours, 1e-9 * (1.0 + ours)) << "seed " << seed;
        const double theirs = nlopt_best(question, objective);
        EXPECT_LE(ours, theirs + 1e-6 * (1.0 + theirs)) << "seed " << seed;
    }
}

TEST(SettingsOptimum, IsNeverWorseThanNloptFirstHorns) {
    never_worse_than_nlopt(1, 130);
}

TEST(SettingsOptimum, IsNeverWorseThanNloptOtherHorns) {
    never_worse_than_nlopt(1001, 130);
}

TEST(SettingsOptimum, IsNeverAboveAGridPoint) {
    for (unsigned seed = 1; seed <= 60; ++seed) {
        const SettingsQuestion question = random_question(seed);
        const PlainObjective objective(question);
        const double ours = recommend(question).objective_after.value();
        const Bounds bounds = bounds_of(question);
        const std::size_t size = bounds.low.size();
        constexpr std::size_t points = 6;
        std::vector<std::size_t> at(size, 0);
        for (bool more = true; more;) {
            std::vector<double> positions(size);
            for (std::size_t i = 0; i < size; ++i) {
                positions[i] = bounds.low[i] +
                               static_cast<double>(at[i]) / (points - 1) * (bounds.high[i] - bounds.low[i]);
            }
            EXPECT_LE(ours, objective(positions) + 1e-9) << "seed " << seed;
            std::size_t i = 0;
            while (i < size && ++at[i] == points)
                at[i++] = 0;
            more = i < size;
        }
    }
}

TEST(SettingsOptimum, OnStepsEqualsEnumeration) {
    for (unsigned seed = 1; seed <= 120; ++seed) {
        SettingsQuestion question = random_question(seed);
        if (question.slides.size() > 4) continue;
        question.constants.step = units::Millimetres(seed % 2 == 0 ? 5.0 : 4.0);
        const SlideProblem problem = problem_of(question);
        const PlainObjective objective(question);
        std::vector<std::vector<double>> places;
        for (const QuestionSlide& slide : question.slides) {
            std::vector<double>& of = places.emplace_back(1, slide.now.value());
            for (double at = 0.0; at <= slide.travel.value() && !slide.fixed;
                 at += question.constants.step.value()) {
                if (at >= slide.least.value()) of.push_back(at);
            }
        }
        double best = INFINITY;
        std::vector<std::size_t> at(places.size(), 0);
        for (bool more = true; more;) {
            std::vector<double> positions;
            for (std::size_t i = 0; i < at.size(); ++i)
                positions.push_back(places[i][at[i]]);
            best = std::min(best, objective(positions));
            std::size_t i = 0;
            while (i < at.size() && ++at[i] == places[i].size())
                at[i++] = 0;
            more = i < at.size();
        }
        EXPECT_NEAR(recommend(question).objective_after.value(), best, 1e-9 * (1.0 + best))
            << "seed " << seed;
    }
}

TEST(SettingsOptimum, TheObjectiveIsThePagesFormula) {
    for (unsigned seed = 1; seed <= 50; ++seed) {
        const SettingsQuestion question = random_question(seed);
        const PlainObjective plain(question);
        std::vector<double> at = positions_now(question);
        std::vector<units::Millimetres> positions;
        for (std::size_t i = 0; i < at.size(); ++i) {
            at[i] = 0.5 * (at[i] + question.slides[i].travel.value());
            positions.emplace_back(at[i]);
        }
        EXPECT_NEAR(objective(question, positions).value(), plain(at), 1e-9 * (1.0 + plain(at)));
    }
}

TEST(SettingsOptimum, SlopesEqualDifferences) {
    for (unsigned seed = 1; seed <= 50; ++seed) {
        SettingsQuestion question = random_question(seed);
        question.constants.cost_per_cent_moved = 0.0;
        question.constants.most_mean_sharp = units::Cents(0.0);
        SlideProblem problem = problem_of(question);
        const Positions at = positions_now(question);
        problem.mean_ways.assign(problem.notes.size(), 0);
        const Choice ways = best_ways(problem, at);
        const LocalModel model = local_model(problem, at, ways);
        for (std::size_t i = 0; i < at.size(); ++i) {
            constexpr double h = 1e-4;
            Positions above = at;
            Positions below = at;
            above[i] += h;
            below[i] -= h;
            const double difference =
                (guarded_objective(problem, above, ways) - guarded_objective(problem, below, ways)) /
                (2.0 * h);
            EXPECT_NEAR(model.slope[i], difference, 1e-4 * (1.0 + std::abs(difference))) << "seed " << seed;
        }
    }
}

}  // namespace
}  // namespace lowledger::tuning
