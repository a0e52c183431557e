#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "tests/truth/bore.h"
#include "tests/truth/hands.h"
#include "tests/truth/known.h"
#include "tests/truth/plan.h"
#include "tests/truth/sections.h"
#include "tests/truth/tally.h"

namespace lowledger::truth {
namespace {

constexpr double ninety_percent = 1.6448536269514722;

/// What goes wrong on the way from the horn to the sheet.
enum class Mishap { none, outlying_take, wrong_place_written, wrong_slide_moved };

struct Scenario {
    std::string what;
    WorldLaw law{};
    bool two_sheets = false;
    Mishap mishap = Mishap::none;
};

struct Outcome {
    Tally nothing;
    Tally after;
    Tally over_knowing;
    Share covered;
    Share told;
    Share rightly;
};

/// What the program pointed out.
struct Told {
    bool anything = false;
    bool rightly = false;
};

Told told_of(const tuning::TuningProfile& profile, Mishap mishap, const Played& bad,
             const std::string& slide) {
    Told told;
    const auto moves = [&](const tuning::MoveCheck& check) { return check.told; };
    told.anything =
        !profile.outlying.empty() || !profile.other_horn.empty() || std::ranges::any_of(profile.moves, moves);
    switch (mishap) {
        case Mishap::none:
            break;
        case Mishap::outlying_take:
            told.rightly = std::ranges::any_of(profile.outlying, [&](const tuning::OutlyingTake& take) {
                return take.note == bad.note && take.fingering == bad.fingering && take.take == 1;
            });
            break;
        case Mishap::wrong_place_written:
        case Mishap::wrong_slide_moved:
            told.rightly = std::ranges::any_of(profile.moves, [&](const tuning::MoveCheck& check) {
                const tuning::MoveAccount& likeliest = check.likeliest;
                return check.told && (likeliest.slide == slide || likeliest.instead == slide);
            });
            break;
    }
    return told;
}

/// Slides of a horn at three times: as first read, as written afterwards, and as they truly went.
struct Moved {
    Places before;
    Places written;
    Places truly_went;
    /// The slide that is not where it is written.
    std::string slide{};
};

Moved moved_slides(const World& world, const Scenario& scenario) {
    Moved moved{designed_places(world.kind()), {}, {}};
    moved.written = moved.before;
    moved.truly_went = moved.before;
    const auto& steps = world.kind().tuning_order;
    const std::string& first = steps[2].slide;
    const std::string& third = steps[3].slide;
    constexpr units::Millimetres pull(10.0);
    if (!scenario.two_sheets) return moved;
    moved.written[first] += pull;
    if (scenario.mishap == Mishap::wrong_slide_moved) {
        moved.truly_went[third] += pull;
        moved.slide = third;
    } else {
        moved.truly_went[first] += pull;
    }
    if (scenario.mishap == Mishap::wrong_place_written) {
        moved.truly_went[third] += pull;
        moved.slide = third;
    }
    return moved;
}

void simulate(const Scenario& scenario, int number, Outcome& outcome) {
    const horns::HornKind& kind = valved_kind(number);
    const auto level = static_cast<studio::Level>(number % 3);
    World world(kind, level, {today - 30, today}, scenario.law, 80000U + static_cast<unsigned>(number));
    const Moved moved = moved_slides(world, scenario);
    const Places truly_now = world.truly(moved.truly_went);
    world.get_used_to(world.truly(moved.before));
    constexpr std::size_t notes = 10;
    const std::vector<Played>& plan = planned_notes(kind, level, 20);
    const std::vector<Played> read(plan.begin(), plan.begin() + notes);

    tuning::TuningInputs inputs = inputs_for(world, moved.written);
    inputs.room_today = units::Celsius(21.0);
    if (scenario.two_sheets) {
        const Sitting first{.on = today - 30, .number = 1, .places = world.truly(moved.before)};
        inputs.sheets.push_back(sheet_of(world, first, moved.before, read, 2));
    }
    const Sitting last{.on = today, .number = 2, .places = truly_now};
    inputs.sheets.push_back(sheet_of(world, last, moved.written, read, 2));
    if (scenario.mishap == Mishap::outlying_take) {
        auto& readings = inputs.sheets.back().readings;
        const auto bad = std::ranges::find_if(readings, [&](const studio::Reading& reading) {
            return reading.note == read[1].note && reading.take == 1;
        });
        if (bad != readings.end()) {
            bad->cents += units::Cents(bad->cents > units::Cents(0.0) ? -40.0 : 40.0);
        }
    }
    const tuning::TuningAnswer answer = tuning::answer(inputs);
    const Knowing knowing(world, truly_now, 0);
    const tuning::SlideSettings known = knowing.settings(answer.question);
    const Places after = Hands(world, last, truly_now).set_by_ruler(answer.settings);
    const double best = mean_lean(world, answer.question, known, recommended(known)).answered;
    const double ours = mean_lean(world, answer.question, answer.settings, after).answered;
    outcome.nothing.add(mean_lean(world, answer.question, answer.settings, truly_now).answered);
    outcome.after.add(ours);
    outcome.over_knowing.add(ours - best);
    double hits = 0.0;
    for (const tuning::ProfileNote& note : answer.profile.notes) {
        const units::Cents heard = world.heard({note.note, note.fingering, note.partial}, truly_now, 0);
        hits += units::abs(heard - note.mean) <= ninety_percent * note.spread ? 1.0 : 0.0;
    }
    outcome.covered.add_horn(hits, static_cast<double>(answer.profile.notes.size()));
    const Told told = told_of(answer.profile, scenario.mishap, read[1], moved.slide);
    outcome.told.add_horn(told.anything ? 1.0 : 0.0, 1.0);
    outcome.rightly.add_horn(told.rightly ? 1.0 : 0.0, 1.0);
}

std::vector<Scenario> scenarios() {
    WorldLaw wide;
    wide.wider = 2.0;
    WorldLaw little;
    little.kappa = 0.3;
    WorldLaw much;
    much.kappa = 0.5;
    WorldLaw line;
    line.bore = transmission_line_bore();
    return {{"as the model says", {}},
            {"everything spread twice as wide", wide},
            {"the player corrects 0.3", little},
            {"the player corrects 0.5", much},
            {"partials of a transmission line", line},
            {"a take 40 cents off", {}, false, Mishap::outlying_take},
            {"two sheets, the first slide moved 10 mm as told", {}, true},
            {"the same, and the third 10 mm from where it is written", {}, true, Mishap::wrong_place_written},
            {"the third moved instead of the first", {}, true, Mishap::wrong_slide_moved}};
}

std::string share_text(const Share& share) {
    return fmt::format("{:.1f} ± {:.1f}", share.percent(), share.error());
}

Report::Row bore_row() {
    const BoreLean bore = transmission_line_bore();
    Report::Row row{"lean, cents"};
    for (int n = 1; n <= 10; ++n)
        row.push_back(fmt::format("{:+.0f}", bore(1.0, n).value()));
    return row;
}

}  // namespace

void wrong_worlds(Report& report) {
    const int horns = report.count(400, 24);
    std::vector<Report::Row> rows;
    std::vector<Outcome> outcomes;
    for (const Scenario& scenario : scenarios()) {
        Outcome& outcome = outcomes.emplace_back();
        for (int number = 0; number < horns; ++number)
            simulate(scenario, number, outcome);
        const bool mishap = scenario.mishap != Mishap::none;
        rows.push_back(
            {scenario.what, fmt::format("{:.1f}", outcome.nothing.mean()),
             fmt::format("{:.2f} ± {:.2f}", outcome.after.mean(), outcome.after.error()),
             fmt::format("{:+.2f} ± {:.2f}", outcome.over_knowing.mean(), outcome.over_knowing.error()),
             share_text(outcome.covered), share_text(outcome.told),
             mishap ? share_text(outcome.rightly) : ""});
    }
    report.heading("Wrong worlds");
    report.paragraph(fmt::format(
        "{} horns each, of eight kinds with valves and all levels in turn, ten notes read twice; the slides "
        "are set "
        "by the ruler as recommended. Weighted mean |cents| of what slides are to answer with nothing moved, "
        "after, and above one who knows everything; in percent how often the lean as played lies in its 90 % "
        "interval, how often anything is pointed out, and how often it is the right thing.",
        horns));
    report.table({"world", "nothing moved", "after", "above knowing all", "covered, %", "pointed out, %",
                  "rightly, %"},
                 rows);
    report.paragraph("The transmission line's partials with no valve down, against one effective length:");
    report.table({"partial", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10"}, {bore_row()});
    const auto few = [](const Share& told) {
        return told.percent() <= 1.0 + 3.0 * std::max(0.5, told.error());
    };
    report.verdict(
        few(outcomes[0].told) && few(outcomes[6].told),
        "where nothing is wrong, something is pointed out in about one answer of a hundred at most.");
    report.verdict(outcomes[5].rightly.percent() > 50.0, "most takes that are 40 cents off are pointed out.");
    const bool better = std::ranges::all_of(
        outcomes, [](const Outcome& outcome) { return outcome.after.mean() < outcome.nothing.mean(); });
    report.aim(better, "in no world are the horns worse off, in the mean, than if nothing had been moved.");
}

}  // namespace lowledger::truth
