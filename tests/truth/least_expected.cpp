#include "tests/truth/least_expected.h"

#include <algorithm>
#include <cmath>
#include <nlopt.h>

#include "model/tuning/loss.h"
#include "model/tuning/slide_problem.h"

namespace lowledger::truth {
namespace {

double size_of(const tuning::SlideProblem& problem, const tuning::SlideProblem::Way& way,
               const tuning::Positions& at) {
    return tuning::expected_size_of(tuning::lean_at(way, problem, at), way.spread);
}

std::size_t best_way(const tuning::SlideProblem& problem, const tuning::SlideProblem::Note& note,
                     const tuning::Positions& at) {
    const auto best =
        std::ranges::min_element(note.ways, {}, [&](const auto& way) { return size_of(problem, way, at); });
    return static_cast<std::size_t>(best - note.ways.begin());
}

double expected(const tuning::SlideProblem& problem, const tuning::Positions& at) {
    double sum = 0.0;
    for (const auto& note : problem.notes) {
        if (note.weight != 0.0)
            sum += note.weight * size_of(problem, note.ways[best_way(problem, note, at)], at);
    }
    return sum;
}

double value(unsigned size, const double* at, double* /*gradient*/, void* data) {
    return expected(*static_cast<const tuning::SlideProblem*>(data), tuning::Positions(at, at + size));
}

/// Goes on from `at`; returns the value there.
double descend(tuning::SlideProblem& problem, tuning::Positions& at) {
    std::vector<double> low;
    std::vector<double> high;
    for (std::size_t i = 0; i < at.size(); ++i) {
        low.push_back(problem.slides[i].low);
        high.push_back(problem.slides[i].high);
        at[i] = std::clamp(at[i], low.back(), high.back());
    }
    nlopt_opt solver = nlopt_create(NLOPT_LN_SBPLX, static_cast<unsigned>(at.size()));
    nlopt_set_lower_bounds(solver, low.data());
    nlopt_set_upper_bounds(solver, high.data());
    nlopt_set_min_objective(solver, value, &problem);
    nlopt_set_ftol_rel(solver, 1e-8);
    nlopt_set_maxeval(solver, 1500);
    double found = INFINITY;
    nlopt_optimize(solver, at.data(), &found);
    nlopt_destroy(solver);
    return found;
}

}  // namespace

tuning::SlideSettings least_expected(const tuning::SettingsQuestion& question,
                                     const tuning::SlideSettings& near) {
    tuning::SlideProblem problem = tuning::problem_of(question);
    std::vector<tuning::Positions> starts(4);
    for (const auto& slide : near.slides) {
        const double there = slide.recommended.value();
        const double now = slide.now.value();
        starts[0].push_back(there);
        starts[1].push_back(now);
        starts[2].push_back(0.5 * (there + now));
        starts[3].push_back(1.5 * there - 0.5 * now);
    }
    tuning::Positions best;
    double least = INFINITY;
    for (tuning::Positions& at : starts) {
        const double found = descend(problem, at);
        if (found < least) {
            least = found;
            best = at;
        }
    }
    tuning::SlideSettings settings = near;
    for (std::size_t i = 0; i < best.size(); ++i) {
        settings.slides[i].recommended = units::Millimetres(best[i]);
        settings.slides[i].advice = tuning::Advice::move;
    }
    for (std::size_t n = 0; n < question.notes.size(); ++n)
        settings.notes[n].way = question.notes[n].ways[best_way(problem, problem.notes[n], best)];
    settings.mean_after = units::Cents(least);
    return settings;
}

studio::TuningSheet long_run_sheet(const World& world, const Places& truly, const Places& written,
                                   const std::vector<Played>& notes) {
    studio::TuningSheet sheet = sheet_of(world, {.on = world.today()}, written, {}, 0);
    for (const Played& played : notes) {
        const units::Cents cents = world.heard(played, truly, 0);
        if (units::abs(cents) < units::Cents(100.0))
            sheet.readings.push_back({played.note, played.fingering, played.partial, 1, cents});
    }
    return sheet;
}

const tuning::Figures& long_run_figures() {
    static const tuning::Figures all = [] {
        tuning::Figures quiet = tuning::figures();
        constexpr units::Cents hardly(0.01);
        for (tuning::LevelFigures* level : {&quiet.beginner, &quiet.middle, &quiet.advanced})
            level->take = level->note_by_sitting = level->sitting = hardly;
        quiet.tuner = hardly;
        return quiet;
    }();
    return all;
}

}  // namespace lowledger::truth
