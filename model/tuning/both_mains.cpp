#include "model/tuning/both_mains.h"

#include <algorithm>

#include "model/tuning/follow_reading.h"
#include "model/tuning/slide_search.h"

namespace lowledger::tuning {
namespace {

std::optional<std::size_t> main_slide(const SettingsQuestion& question) {
    for (std::size_t i = 0; i < question.slides.size(); ++i)
        if (!question.tube.slides[i].valve && !question.slides[i].fixed) return i;
    return std::nullopt;
}

/// The problem with every slide but one as chosen, that one free of steps and of the cost of moving.
SlideProblem free_alone(const SettingsQuestion& question, const Positions& at, std::size_t free) {
    SlideProblem problem = problem_of(question);
    problem.held_note.reset();
    for (std::size_t i = 0; i < problem.slides.size(); ++i) {
        SlideProblem::Slide& slide = problem.slides[i];
        slide.places.clear();
        slide.cost = 0.0;
        if (i != free) slide.low = slide.high = at[i];
    }
    return problem;
}

}  // namespace

std::optional<BothMains> both_mains(const TuningProfile& profile, const SettingsQuestion& question,
                                    const SlideSettings& settings) {
    const std::optional<std::size_t> main = main_slide(question);
    if (!main) return std::nullopt;
    const Chosen chosen = chosen_by(question, settings);
    SlideProblem problem = free_alone(question, chosen.at, *main);
    problem.mean_ways = chosen.ways;
    const auto place = [&] {
        return units::Millimetres(minimise_with_ways(problem, chosen.ways, chosen.at).at[*main]);
    };
    BothMains both{question.slides[*main].slide, {}, place()};
    for (SlideProblem::Note& note : problem.notes)
        for (SlideProblem::Way& way : note.ways)
            way.mean -= profile.settled_pitch.answered.value();
    both.horn_alone = place();
    return both;
}

}  // namespace lowledger::tuning
