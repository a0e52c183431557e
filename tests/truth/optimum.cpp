#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>

#include "model/tuning/certificate.h"
#include "tests/truth/known.h"
#include "tests/truth/sections.h"
#include "tests/truth/solver.h"

namespace lowledger::truth {
namespace {

using tuning::SettingsQuestion;

/// The question of a horn of some kind with a sheet of its tuning notes: the plain optimum is asked for.
SettingsQuestion question_of_kind(int number) {
    const auto& kinds = horns::built_in_kinds();
    const auto& kind = kinds[static_cast<std::size_t>(number) % kinds.size()];
    const auto level = static_cast<studio::Level>(number / 3 % 3);
    const studio::Date today(2026, 3, 2);
    const World world(kind, level, {today}, {.wider = 1.5}, 7000U + static_cast<unsigned>(number));
    const Places written = designed_places(kind);
    const Sitting sitting{.on = today, .places = world.truly(written)};
    tuning::TuningInputs inputs = inputs_for(world, written);
    inputs.sheets = {sheet_of(world, sitting, written, tuning_notes(kind), 2)};
    SettingsQuestion question = tuning::answer(inputs).question;
    question.constants.chance_of_better = 0.0;
    question.constants.step = units::Millimetres(0.0);
    question.constants.most_mean_sharp = units::Cents(1000.0);
    return question;
}

/// Half the horns are of the kinds there are, half of none.
SettingsQuestion question_number(int number) {
    return number % 2 == 0 ? question_of_kind(number / 2)
                           : tuning::random_question(9000U + static_cast<unsigned>(number));
}

/// Relative to the objective's size.
double excess(double ours, double theirs) {
    return (ours - theirs) / (1.0 + theirs);
}

struct Against {
    double worst = -std::numeric_limits<double>::infinity();
    int above = 0;
    int horns = 0;
    void add(double excess, double most) {
        worst = std::max(worst, excess);
        above += excess > most ? 1 : 0;
        ++horns;
    }
    [[nodiscard]] Report::Row row(const std::string& what) const {
        return {what, std::to_string(horns), fmt::format("{:.1e}", worst), std::to_string(above)};
    }
};

/// Slides beyond the fourth are held, or there is no end to counting.
void hold_beyond(SettingsQuestion& question, std::size_t free) {
    std::size_t moving = 0;
    for (tuning::QuestionSlide& slide : question.slides) {
        if (!slide.fixed && ++moving > free) slide.fixed = true;
    }
}

Against against_lattice(int horns, units::Millimetres step, std::size_t free_slides) {
    Against against;
    for (int number = 0; number < horns; ++number) {
        SettingsQuestion question = question_number(number);
        question.constants.step = step;
        hold_beyond(question, free_slides);
        const tuning::PlainObjective objective(question);
        const double ours = objective(tuning::positions_recommended(tuning::recommend(question)));
        against.add(std::abs(excess(ours, least_of_all(objective, lattice_of(question)))), 1e-9);
    }
    return against;
}

}  // namespace

void optimum(Report& report) {
    constexpr double most = 1e-6;
    constexpr int starts = 16;
    Against nlopt;
    Against grid;
    Against told;
    for (int number = 0; number < report.count(1000, 30); ++number) {
        const SettingsQuestion question = question_number(number);
        const tuning::PlainObjective objective(question);
        const tuning::SlideSettings settings = tuning::recommend(question);
        const double ours = objective(tuning::positions_recommended(settings));
        const Bounds bounds = bounds_of(question);
        told.add(std::abs(excess(settings.objective_after.value(), ours)), 1e-9);
        nlopt.add(excess(ours, nlopt_best(objective, bounds, starts)), most);
        const int points = bounds.low.size() > 5 ? 4 : 6;
        grid.add(excess(ours, least_of_all(objective, grid_of(bounds, points))), 1e-9);
    }
    Against certified;
    int closed = 0;
    for (int number = 0; number < report.count(60, 6); ++number) {
        const SettingsQuestion question = question_number(number);
        const tuning::SlideSettings settings = tuning::recommend(question);
        const tuning::Certificate certificate = tuning::certify(question, settings);
        certified.add(certificate.gap.value() / (1.0 + settings.objective_after.value()), most);
        closed += certificate.closed ? 1 : 0;
    }
    const Against steps = against_lattice(report.count(200, 10), units::Millimetres(5.0), 4);
    const Against sixteenths = against_lattice(report.count(60, 4), units::Millimetres(25.4 / 16.0), 3);

    report.heading("The optimum");
    report.paragraph(
        "Half of the horns are of the kinds that come with the program, with a sheet of their tuning notes; "
        "half "
        "are of no kind: two to five valves, any lengths, limits and beliefs, a tenth of the slides fixed. "
        "Every "
        "move is worth it. The objective is written out again for this "
        "(`tests/model/tuning/random_question`). "
        "NLopt's subplex method starts from " +
        std::to_string(starts) + " places. The excess is (ours - theirs) / (1 + theirs).");
    report.table({"against", "horns", "largest excess", "horns above the limit"},
                 {nlopt.row("NLopt, limit 1e-6"), grid.row("every point of a grid, limit 1e-9"),
                  certified.row("the bound of its certificate, limit 1e-6"),
                  told.row("the objective as told (either way), 1e-9"),
                  steps.row("every place on 5 mm steps (either way), 1e-9"),
                  sixteenths.row("every sixteenth of an inch (either way), 1e-9")});
    report.verdict(nlopt.above == 0, "no optimum is worse than the best that NLopt finds by more than 1e-6.");
    report.aim(closed == certified.horns,
               fmt::format("every certificate is closed ({} of {}).", closed, certified.horns));
    report.verdict(grid.above == 0 && told.above == 0,
                   "no optimum is above a grid point, and the objective told is the page's.");
    report.verdict(steps.above == 0 && sixteenths.above == 0,
                   "on steps and sixteenths it is the least of all places.");
}

}  // namespace lowledger::truth
