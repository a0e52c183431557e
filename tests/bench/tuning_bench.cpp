#include <benchmark/benchmark.h>
#include <nlopt.h>

#include "model/tuning/belief.h"
#include "tests/model/tuning/played_horn.h"
#include "tests/model/tuning/random_question.h"

namespace lowledger::tuning {
namespace {

TuningInputs measured(studio::Level level, unsigned seed) {
    TuningInputs inputs = fresh_inputs(level, "bbb-tuba-4");
    TrueHorn horn;
    horn.extra_open = units::Millimetres(-70.0);
    horn.noise = units::Cents(4.0);
    horn.seed = seed;
    inputs.sheets = {sheet_of(inputs, horn, 2, {"F1", "Bb2", "F2"})};
    return inputs;
}

studio::Level level_of(std::int64_t number) {
    return static_cast<studio::Level>(number);
}

/// One student, five slides, the whole range: sheet to card.
void answer_one(benchmark::State& state) {
    const TuningInputs inputs = measured(level_of(state.range(0)), 1);
    for (auto _ : state)
        benchmark::DoNotOptimize(answer(inputs));
}
BENCHMARK(answer_one)->DenseRange(0, 2)->Unit(benchmark::kMillisecond);

/// The profile alone, of one sheet and of six with slides moved in between.
void profile_one(benchmark::State& state) {
    TuningInputs inputs = measured(studio::Level::middle, 1);
    const studio::TuningSheet first = inputs.sheets.front();
    for (int k = 1; k < state.range(0); ++k) {
        inputs.sheets.push_back(first);
        inputs.sheets.back().id.number = k + 1;
        inputs.sheets.back().on = first.on - 30 * k;
        inputs.sheets.back().positions.at("main") += units::Millimetres(5.0 * k);
    }
    for (auto _ : state)
        benchmark::DoNotOptimize(believe(inputs, figures()));
}
BENCHMARK(profile_one)->Arg(1)->Arg(6)->Unit(benchmark::kMillisecond);

/// The settings alone.
void settings_one(benchmark::State& state) {
    const SettingsQuestion question = answer(measured(level_of(state.range(0)), 1)).question;
    for (auto _ : state)
        benchmark::DoNotOptimize(recommend(question));
}
BENCHMARK(settings_one)->DenseRange(0, 2)->Unit(benchmark::kMillisecond);

/// The certificate of what was answered.
void certificate_one(benchmark::State& state) {
    const SettingsQuestion question = answer(measured(level_of(state.range(0)), 1)).question;
    const SlideSettings settings = recommend(question);
    for (auto _ : state)
        benchmark::DoNotOptimize(certify(question, settings));
}
BENCHMARK(certificate_one)->DenseRange(0, 2)->Unit(benchmark::kMillisecond);

/// A studio of sixty.
void answer_sixty(benchmark::State& state) {
    std::vector<TuningInputs> studio;
    for (unsigned seed = 0; seed < 60; ++seed)
        studio.push_back(measured(level_of(seed % 3), seed + 1));
    for (auto _ : state) {
        for (const TuningInputs& inputs : studio)
            benchmark::DoNotOptimize(answer(inputs));
    }
}
BENCHMARK(answer_sixty)->Unit(benchmark::kMillisecond);

/// Random questions with alternates, any position.
void random_questions(benchmark::State& state) {
    std::vector<SettingsQuestion> questions;
    for (unsigned seed = 1; seed <= 50; ++seed)
        questions.push_back(random_question(seed));
    for (auto _ : state) {
        for (const SettingsQuestion& question : questions)
            benchmark::DoNotOptimize(recommend(question));
    }
}
BENCHMARK(random_questions)->Unit(benchmark::kMillisecond);

/// The same questions, objective and tolerance for NLopt's subplex method (no derivatives, since the choice
/// of ways has kinks), from where the slides stand alone: to be read against `random_questions` in the same
/// run.
double value_for_nlopt(unsigned size, const double* at, double* /*gradient*/, void* data) {
    return (*static_cast<const PlainObjective*>(data))(std::vector<double>(at, at + size));
}

void random_questions_by_nlopt(benchmark::State& state) {
    std::vector<SettingsQuestion> questions;
    for (unsigned seed = 1; seed <= 50; ++seed)
        questions.push_back(random_question(seed));
    for (auto _ : state) {
        for (const SettingsQuestion& question : questions) {
            PlainObjective objective(question);
            std::vector<double> low;
            std::vector<double> high;
            for (const QuestionSlide& slide : question.slides) {
                low.push_back((slide.fixed ? slide.now : slide.least).value());
                high.push_back((slide.fixed ? slide.now : slide.travel).value());
            }
            std::vector<double> at = positions_now(question);
            nlopt_opt solver = nlopt_create(NLOPT_LN_SBPLX, static_cast<unsigned>(low.size()));
            nlopt_set_lower_bounds(solver, low.data());
            nlopt_set_upper_bounds(solver, high.data());
            nlopt_set_min_objective(solver, value_for_nlopt, &objective);
            nlopt_set_ftol_rel(solver, 1e-10);
            double value = 0.0;
            nlopt_optimize(solver, at.data(), &value);
            nlopt_destroy(solver);
            benchmark::DoNotOptimize(value);
        }
    }
}
BENCHMARK(random_questions_by_nlopt)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace lowledger::tuning
