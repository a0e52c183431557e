#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "model/horns/chart.h"
#include "tests/truth/known.h"
#include "tests/truth/sections.h"
#include "tests/truth/tally.h"

namespace lowledger::truth {
namespace {

constexpr double ninety_percent = 1.6448536269514722;

/// Coverage of one kind of statement: all horns, and by level.
struct Covered {
    std::string what;
    Share all{};
    std::vector<Share> by_level = std::vector<Share>(3);

    void add_horn(studio::Level level, double hits, double of) {
        all.add_horn(hits, of);
        by_level[static_cast<std::size_t>(level)].add_horn(hits, of);
    }
    [[nodiscard]] Report::Row row() const {
        const auto text = [](const Share& share) {
            return fmt::format("{:.1f} ± {:.1f}", share.percent(), share.error());
        };
        return {what,
                fmt::format("{:.0f}", all.things()),
                text(all),
                text(by_level[0]),
                text(by_level[1]),
                text(by_level[2])};
    }
};

struct Coverage {
    Covered measured{"notes measured, as played"};
    Covered unmeasured{"notes not measured, as played"};
    Covered answered{"what slides are to answer, all notes"};
    Covered anywhere{"positions, as if slides had no limits"};
    Covered inside{"positions, all slides inside their limits"};
    Covered clipped{"positions, a slide at its limit: against the best within limits"};
    Covered switching{"positions where other fingerings are best: against the best with them"};
    Covered main{"the main slide, all slides inside"};
};

/// Hits and trials on one horn.
struct Count {
    double hits = 0.0;
    double of = 0.0;
    void add(bool hit) {
        hits += hit ? 1.0 : 0.0;
        of += 1.0;
    }
};

/// What the world of one horn is like, and its inputs.
struct Case {
    World world;
    Places written_now;
    int mouthpiece = 0;
    tuning::TuningInputs inputs;
};

Sitting drawn_sitting(const World& world, studio::Date on, int number, const Places& written) {
    const Draw& draw = world.draw();
    Sitting sitting{.on = on, .number = number};
    sitting.room_written = draw.part({1001, number}) < 0.8;
    sitting.room = sitting.room_written ? units::Celsius(draw.between(17.0, 27.0, {1002, number}))
                                        : units::Celsius(21.0 + 2.0 * draw.normal({1003, number}));
    if (draw.part({1004, number}) < 0.2) sitting.tuner_a4 = units::Hertz(442.0);
    sitting.tuner_seen = draw.part({1005, number}) < 0.15;
    sitting.mouthpiece = draw.part({1006, number}) < 0.15 ? 1 : 0;
    sitting.places = world.truly(written);
    return sitting;
}

/// The tuning notes and as many others of the usual range, drawn.
std::vector<Played> drawn_notes(const World& world, std::size_t number, int sheet) {
    std::vector<Played> notes = tuning_notes(world.kind());
    std::vector<horns::ChartNote> chart = horns::chart(world.kind());
    for (int k = 0; notes.size() < number && !chart.empty(); ++k) {
        const auto at = static_cast<std::size_t>(
            world.draw().whole(0, static_cast<int>(chart.size()) - 1, {1010, sheet, k}));
        // Nobody reads a note that is most of a semitone off.
        constexpr units::Cents readable(50.0);
        const bool is_read = units::abs(chart[at].usual.lean) < readable;
        if (chart[at].usual.tone != horns::Tone::false_tone && is_read) {
            notes.push_back({chart[at].note, chart[at].usual.fingering, chart[at].usual.partial});
        }
        chart.erase(chart.begin() + static_cast<std::ptrdiff_t>(at));
    }
    return notes;
}

Places moved_at_random(const World& world, const Places& from) {
    Places places = from;
    for (std::size_t i = 0; i < world.kind().slides.size(); ++i) {
        const horns::SlideKind& slide = world.kind().slides[i];
        places[slide.id] = units::Millimetres(std::round(world.draw().between(
            slide.least.value(), slide.travel.value(), {1020, static_cast<std::int64_t>(i)})));
    }
    return places;
}

Case case_number(int number) {
    const auto& kinds = horns::built_in_kinds();
    const auto& kind = kinds[static_cast<std::size_t>(number) % kinds.size()];
    const auto level = static_cast<studio::Level>(number % 3);
    const studio::Date today(2026, 3, 2);
    const std::vector<studio::Date> days{today - 90, today - 20, today};
    Case made{World(kind, level, days, {}, 40000U + static_cast<unsigned>(number)),
              {},
              0,
              tuning::TuningInputs{.kind = kind, .today = today}};
    World& world = made.world;
    constexpr std::size_t readings[] = {5, 10, 20};
    const std::size_t notes = readings[static_cast<std::size_t>(number) / 3 % 3];
    const bool two_sheets = number / 9 % 2 == 1;
    const Places before = designed_places(kind);
    world.get_used_to(world.truly(before));
    made.written_now = two_sheets ? moved_at_random(world, before) : before;
    made.inputs = inputs_for(world, made.written_now);
    if (two_sheets) {
        const Sitting first = drawn_sitting(world, days[0], 1, before);
        made.inputs.sheets.push_back(sheet_of(world, first, before, drawn_notes(world, notes, 1), 2));
    }
    const Sitting last = drawn_sitting(world, days[1], 2, made.written_now);
    made.inputs.sheets.push_back(
        sheet_of(world, last, made.written_now, drawn_notes(world, notes, 2), 1 + number % 2));
    made.mouthpiece = last.mouthpiece;
    made.inputs.hand.step = units::Millimetres(0.0);
    return made;
}

void notes_of(Coverage& coverage, const Case& made, const tuning::TuningAnswer& answer) {
    const Places truly = made.world.truly(made.written_now);
    Count measured;
    Count unmeasured;
    Count answered;
    for (const tuning::ProfileNote& note : answer.profile.notes) {
        const Played played{note.note, note.fingering, note.partial};
        const units::Cents heard = made.world.heard(played, truly, made.mouthpiece);
        (note.takes > 0 ? measured : unmeasured)
            .add(units::abs(heard - note.mean) <= ninety_percent * note.spread);
        const units::Cents for_slides = made.world.answered(played, truly, made.mouthpiece);
        answered.add(units::abs(for_slides - note.slides_mean) <= ninety_percent * note.slides_spread);
    }
    const studio::Level level = made.world.level();
    coverage.measured.add_horn(level, measured.hits, measured.of);
    coverage.unmeasured.add_horn(level, unmeasured.hits, unmeasured.of);
    coverage.answered.add_horn(level, answered.hits, answered.of);
}

bool any_at_limit(const tuning::SlideSettings& settings) {
    return std::ranges::any_of(settings.slides,
                               [](const auto& slide) { return slide.limit != tuning::Limit::none; });
}

bool any_outside(const tuning::SlideSettings& settings, const Places& places) {
    return std::ranges::any_of(settings.slides, [&](const tuning::SlideAnswer& slide) {
        return slide.half_width &&
               (places.at(slide.slide) < slide.least || places.at(slide.slide) > slide.travel);
    });
}

/// Horns where one who knows everything plays some note otherwise.
void switching_of(Coverage& coverage, const tuning::SlideSettings& settings,
                  const tuning::SlideSettings& known, studio::Level level) {
    bool same = true;
    Count counted;
    for (std::size_t n = 0; n < known.notes.size(); ++n) {
        same = same && (known.notes[n].weight == 0.0 ||
                        known.notes[n].way.fingering == settings.notes[n].way.fingering);
    }
    if (same) return;
    const Places places = recommended(known);
    for (const tuning::SlideAnswer& slide : settings.slides) {
        if (!slide.half_width) continue;
        counted.add(units::abs(places.at(slide.slide) - slide.recommended) <= *slide.half_width);
    }
    coverage.switching.add_horn(level, counted.hits, counted.of);
}

/// Slides that may go anywhere: nothing is left out by what is believed.
void anywhere_of(Coverage& coverage, const tuning::SettingsQuestion& question, const Knowing& knowing,
                 studio::Level level) {
    const tuning::SlideSettings settings = tuning::recommend(without_limits(question));
    const Places belong = knowing.where_they_belong(question, settings);
    Count counted;
    for (const tuning::SlideAnswer& slide : settings.slides) {
        if (!slide.half_width) continue;
        const units::Millimetres off = belong.at(slide.slide) + moved_out - slide.recommended;
        counted.add(units::abs(off) <= *slide.half_width);
    }
    coverage.anywhere.add_horn(level, counted.hits, counted.of);
}

/// Every move worth it, so that a slide stands where it is believed to belong.
void positions_of(Coverage& coverage, const Case& made, const tuning::TuningAnswer& answer) {
    tuning::SettingsQuestion question = answer.question;
    question.constants.chance_of_better = 0.0;
    question.may_move = true;
    const tuning::SlideSettings settings = tuning::recommend(question);
    const Knowing knowing(made.world, made.world.truly(made.written_now), made.mouthpiece);
    const Places belong = knowing.where_they_belong(question, settings);
    const tuning::SlideSettings best = knowing.settings_with_ways(question, settings);
    const Places within_limits = recommended(best);
    const bool clipped = any_at_limit(settings) || any_at_limit(best) || any_outside(settings, belong);
    Count counted;
    Count main;
    for (const tuning::SlideAnswer& slide : settings.slides) {
        if (!slide.half_width) continue;
        const units::Millimetres at = (clipped ? within_limits : belong).at(slide.slide);
        counted.add(units::abs(at - slide.recommended) <= *slide.half_width);
        if (!clipped && slide.slide == settings.slides.front().slide) main = counted;
    }
    const studio::Level level = made.world.level();
    (clipped ? coverage.clipped : coverage.inside).add_horn(level, counted.hits, counted.of);
    coverage.main.add_horn(level, main.hits, main.of);
    anywhere_of(coverage, question, knowing, level);
    switching_of(coverage, settings, knowing.settings(question), level);
}

bool within(const Share& share, double low, double high) {
    // A part of the run knows its share less well than the whole of it.
    const double slack = share.horns() < 1500 ? 3.0 * share.error() : 0.0;
    return share.percent() >= low - slack && share.percent() <= high + slack;
}

}  // namespace

void calibration(Report& report) {
    Coverage coverage;
    const int horns = report.count(2000, 60);
    for (int number = 0; number < horns; ++number) {
        const Case made = case_number(number);
        const tuning::TuningAnswer answer = tuning::answer(made.inputs);
        notes_of(coverage, made, answer);
        positions_of(coverage, made, answer);
    }
    report.heading("Calibration");
    report.paragraph(fmt::format(
        "{} horns of all kinds and their players, every number drawn from the figures and played through "
        "`model/acoustics`; five, ten or twenty notes, once or twice each, half of the horns with an older "
        "sheet "
        "and slides moved since; rooms, tuners at 442 Hz, tuners seen and other mouthpieces among them. In "
        "percent, how often the truth lies in the 90 % interval, with its standard error (the statements "
        "about "
        "one horn hang together).",
        horns));
    report.table(
        {"statement", "number", "all", "beginner", "middle", "advanced"},
        {coverage.measured.row(), coverage.unmeasured.row(), coverage.answered.row(), coverage.anywhere.row(),
         coverage.inside.row(), coverage.main.row(), coverage.clipped.row(), coverage.switching.row()});
    report.verdict(within(coverage.measured.all, 88.0, 92.0), "measured notes are covered 88 to 92 %.");
    report.verdict(within(coverage.unmeasured.all, 88.0, 92.0), "unmeasured notes are covered 88 to 92 %.");
    report.verdict(within(coverage.anywhere.all, 88.0, 92.0),
                   "positions are covered 88 to 92 %, no limits considered.");
    report.verdict(within(coverage.inside.all, 88.0, 100.0),
                   "positions inside the limits are covered at least 88 %.");
    report.paragraph(
        "Where belief and truth both lie inside the limits more than nine of ten agree: most of those that "
        "lie far "
        "apart have left that row, since one of the two is at a limit.");
    report.verdict(within(coverage.clipped.all, 88.0, 100.0),
                   "with a slide at its limit positions are covered at least 88 %.");
    report.aim(within(coverage.switching.all, 88.0, 100.0),
               "where other fingerings are best positions are covered at least 88 %.");
}

}  // namespace lowledger::truth
