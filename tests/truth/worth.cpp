#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>

#include "tests/truth/hands.h"
#include "tests/truth/known.h"
#include "tests/truth/least_expected.h"
#include "tests/truth/plan.h"
#include "tests/truth/sections.h"
#include "tests/truth/tally.h"

namespace lowledger::truth {
namespace {

constexpr std::array<std::size_t, 3> readings{5, 10, 20};

/// One way of setting slides over many horns.
struct Worth {
    std::string what;
    Tally answered{};
    Tally heard{};
    Tally over_knowing{};

    [[nodiscard]] Report::Row row() const {
        return {what,
                fmt::format("{:.2f} ± {:.2f}", answered.mean(), answered.error()),
                fmt::format("{:.2f} ± {:.2f}", answered.worst_tenth(), answered.worst_tenth_error()),
                fmt::format("{:.2f} ± {:.2f}", heard.mean(), heard.error()),
                fmt::format("{:.2f} ± {:.2f}", heard.worst_tenth(), heard.worst_tenth_error()),
                fmt::format("{:+.2f} ± {:.2f}", over_knowing.mean(), over_knowing.error())};
    }
};

/// The card followed in three ways, in mm from where the slide belongs.
struct CardMiss {
    std::array<Tally, 3> mm{};
};

struct LevelWorth {
    Worth nothing{"nothing is moved"};
    Worth trade{};
    std::array<Worth, 3> card{};
    Worth every_move{"ten notes, every move made, to any mm, no card"};
    Worth four_sittings{"the card, the ten notes read in each of four weeks"};
    Worth best_of_ten{"the best that those ten notes allow"};
    Worth best_of_ten_long_run{"the same, read without any noise"};
    Worth best_of_every_way{"the best that every way of every note allows, read without any noise"};
    Worth all_with_ways{"everything known, but fingerings as from ten notes"};
    Worth all{"everything known"};
    /// After the mm alone, as the program expects and as it came, per number of notes.
    std::array<Tally, 3> expected{};
    std::array<Tally, 3> came{};
    /// Of `best_of_ten`, by its own belief.
    Tally best_expected{};
    std::array<CardMiss, 3> miss{};
};

class Tuned {
  public:
    Tuned(studio::Level level, int takes, int number)
        : kind_(valved_kind(number)),
          world_(kind_, level, {today - 21, today - 14, today - 7, today}, {},
                 60000U + static_cast<unsigned>(number)),
          written_(designed_places(kind_)),
          truly_(world_.truly(written_)),
          takes_(takes) {
        world_.get_used_to(truly_);
    }

    void add_to(LevelWorth& worth) const {
        const std::vector<Played> plan = planned_notes(kind_, world_.level(), readings.back());
        const Sitting first{.on = today, .number = 1, .places = truly_};
        const Sitting later{.on = today, .number = 2};
        const Knowing knowing(world_, truly_, 0);
        std::optional<double> best;
        for (std::size_t k = 0; k < readings.size(); ++k) {
            tuning::TuningInputs inputs = inputs_for(world_, written_);
            inputs.room_today = later.room;
            const std::size_t notes = std::min(readings[k], plan.size());
            const std::vector<Played> read(plan.begin(), plan.begin() + static_cast<std::ptrdiff_t>(notes));
            inputs.sheets = {sheet_of(world_, first, written_, read, takes_)};
            const tuning::TuningAnswer answer = tuning::answer(inputs);
            if (k == 0) {
                const tuning::SlideSettings known = knowing.settings(answer.question);
                best = mean_lean(world_, answer.question, known, recommended(known)).answered;
                tuning::SlideSettings usual = answer.settings;
                for (std::size_t n = 0; n < usual.notes.size(); ++n)
                    usual.notes[n].way = answer.question.notes[n].ways.front();
                add(worth.all, mean_lean(world_, answer.question, known, recommended(known)), *best);
                add(worth.nothing, mean_lean(world_, answer.question, usual, truly_), *best);
                const Places traded = Hands(world_, later, truly_).tune_to_zero(takes_);
                add(worth.trade, mean_lean(world_, answer.question, usual, traded), *best);
            }
            const tuning::SlideSettings with_ways =
                knowing.settings_with_ways(answer.question, answer.settings);
            const Places belong = recommended(with_ways);
            if (k == 1) add_to_ten(worth, inputs, answer, with_ways, *best);
            using Follow = Hands::Follow;
            for (const Follow how : {Follow::mm_alone, Follow::reading_alone, Follow::card}) {
                const Places at = Hands(world_, later, truly_).follow(answer.card, how);
                if (how == Follow::mm_alone) {
                    worth.expected[k].add(answer.settings.mean_after.value());
                    worth.came[k].add(mean_lean(world_, answer.question, answer.settings, at).answered);
                }
                if (how == Follow::card) {
                    add(worth.card[k], mean_lean(world_, answer.question, answer.settings, at), *best);
                }
                for (const auto& [slide, place] : at)
                    worth.miss[k].mm[static_cast<std::size_t>(how)].add((place - belong.at(slide)).value());
            }
        }
    }

  private:
    /// What ten notes come to otherwise.
    void add_to_ten(LevelWorth& worth, tuning::TuningInputs inputs, const tuning::TuningAnswer& answer,
                    const tuning::SlideSettings& with_ways, double best) const {
        add(worth.all_with_ways, mean_lean(world_, answer.question, with_ways, recommended(with_ways)), best);
        tuning::SettingsQuestion every = answer.question;
        every.constants.chance_of_better = 0.0;
        every.constants.step = units::Millimetres(0.0);
        const tuning::SlideSettings moved = tuning::recommend(every);
        const Sitting later{.on = today, .number = 2};
        const Places at = Hands(world_, later, truly_).set_by_ruler(moved);
        add(worth.every_move, mean_lean(world_, every, moved, at), best);

        add_what_is_attainable(worth, inputs, answer, moved, best);

        const std::vector<Played>& plan = planned_notes(kind_, world_.level(), readings.back());
        const std::vector<Played> read(plan.begin(), plan.begin() + 10);
        for (int week = 1; week <= 3; ++week) {
            const Sitting sitting{.on = today - 7 * week, .number = 10 + week, .places = truly_};
            inputs.sheets.push_back(sheet_of(world_, sitting, written_, read, takes_));
        }
        const tuning::TuningAnswer four = tuning::answer(inputs);
        const Places then = Hands(world_, later, truly_).follow(four.card, Hands::Follow::card);
        add(worth.four_sittings, mean_lean(world_, four.question, four.settings, then), best);
    }

    /// The least that any rule can come to which knows so much; slides go to the mm by the ruler.
    void add_what_is_attainable(LevelWorth& worth, tuning::TuningInputs inputs,
                                const tuning::TuningAnswer& answer, const tuning::SlideSettings& moved,
                                double best) const {
        const Sitting later{.on = today, .number = 2};
        const auto add_best = [&](Worth& row, const tuning::SettingsQuestion& question,
                                  const tuning::SlideSettings& near) {
            const tuning::SlideSettings least = least_expected(question, near);
            const Places at = Hands(world_, later, truly_).set_by_ruler(least);
            add(row, mean_lean(world_, question, least, at), best);
            return least.mean_after.value();
        };
        worth.best_expected.add(add_best(worth.best_of_ten, answer.question, moved));
        const std::vector<Played>& plan = planned_notes(kind_, world_.level(), readings.back());
        const auto long_run = [&](Worth& row, const std::vector<Played>& read) {
            inputs.sheets = {long_run_sheet(world_, truly_, written_, read)};
            const tuning::TuningAnswer known = tuning::answer(inputs, long_run_figures());
            add_best(row, known.question, known.settings);
        };
        long_run(worth.best_of_ten_long_run, {plan.begin(), plan.begin() + 10});
        std::vector<Played> every_way;
        for (const tuning::QuestionNote& note : answer.question.notes)
            for (const tuning::PlayedNote& way : note.ways)
                every_way.push_back({note.note, way.fingering, way.partial});
        long_run(worth.best_of_every_way, every_way);
    }

    static void add(Worth& worth, const MeanLean& mean, double best) {
        worth.answered.add(mean.answered);
        worth.heard.add(mean.heard);
        worth.over_knowing.add(mean.answered - best);
    }

    const horns::HornKind& kind_;
    World world_;
    Places written_;
    Places truly_;
    int takes_;
};

std::string name_of(studio::Level level) {
    constexpr std::array names{"Beginner", "Middle", "Advanced"};
    return names[static_cast<std::size_t>(level)];
}

LevelWorth worth_of(studio::Level level, int takes, int horns) {
    LevelWorth worth;
    worth.trade.what = "each slide until its note reads zero";
    for (std::size_t k = 0; k < readings.size(); ++k)
        worth.card[k].what = fmt::format("the card, {} notes read", readings[k]);
    for (int number = 0; number < horns; ++number)
        Tuned(level, takes, number).add_to(worth);
    return worth;
}

/// a is no more than b, beyond chance in a part of the run.
bool no_more(double a, double b, double error, bool whole) {
    return a <= b + (whole ? 0.0 : 3.0 * error);
}

void judge(Report& report, const std::string& which, const LevelWorth& worth, bool whole) {
    const Worth& five = worth.card[0];
    const double error = std::hypot(five.answered.error(), worth.trade.answered.error());
    report.verdict(no_more(five.answered.mean(), worth.trade.answered.mean(), error, whole),
                   which + ": in what slides answer five notes and the card beat zero by zero, in the mean.");
    const double worst_error =
        std::hypot(five.answered.worst_tenth_error(), worth.trade.answered.worst_tenth_error());
    report.verdict(
        no_more(five.answered.worst_tenth(), worth.trade.answered.worst_tenth(), worst_error, whole),
        which + ": and in the worst tenth.");
    report.aim(five.heard.mean() <= worth.trade.heard.mean() &&
                   five.heard.worst_tenth() <= worth.trade.heard.worst_tenth(),
               which + ": as heard too, in the mean and in the worst tenth.");
    report.aim(worth.card[1].over_knowing.mean() <= 1.0,
               fmt::format("{}: ten notes come within 1 cent of knowing everything ({:+.2f}).", which,
                           worth.card[1].over_knowing.mean()));
}

/// From knowing everything to what is advised after ten notes: mean |cents| of what slides answer.
Report::Row attainable_row(const std::string& which, const LevelWorth& worth) {
    Report::Row row{which};
    for (const Worth* step : {&worth.all, &worth.best_of_every_way, &worth.best_of_ten_long_run,
                              &worth.best_of_ten, &worth.every_move, &worth.card[1]})
        row.push_back(fmt::format("{:.2f}", step->answered.mean()));
    return row;
}

Report::Row miss_row(const std::string& which, const CardMiss& miss) {
    Report::Row row{which};
    for (const Tally& mm : miss.mm)
        row.push_back(fmt::format("{:.1f}", mm.root_mean_square()));
    return row;
}

}  // namespace

void worth(Report& report) {
    const int horns = report.count(300, 16);
    report.heading("What it is worth");
    report.paragraph(fmt::format(
        "{} horns for each table, of eight kinds with valves, slides at their designed places. Five, ten or "
        "twenty notes are read, those that the program asks for, alternates among them where the level uses "
        "them; then, in another sitting, the card is "
        "followed. "
        "The trade's way (common practice) moves each slide by what its note is off zero, the third by 2-3, "
        "until "
        "it reads within a cent. Weighted mean |cents| over the notes of a horn: of what slides are to "
        "answer "
        "(the horn, and gamma of the player's settled pitch), and as heard; their means over horns and over "
        "the "
        "worst tenth of the horns, with standard errors; and what the first is above knowing everything.",
        horns));
    std::vector<Report::Row> misses;
    std::vector<Report::Row> attainable;
    bool card_no_worse = true;
    for (const int takes : {1, 3}) {
        for (const auto level : {studio::Level::beginner, studio::Level::middle, studio::Level::advanced}) {
            const LevelWorth worth = worth_of(level, takes, horns);
            const std::string which =
                fmt::format("{}, {}", name_of(level), takes == 1 ? "one take" : "three takes");
            report.paragraph("**" + which + "**");
            std::vector<Report::Row> rows{worth.nothing.row(), worth.trade.row()};
            for (const Worth& card : worth.card)
                rows.push_back(card.row());
            for (const Worth* other :
                 {&worth.every_move, &worth.four_sittings, &worth.best_of_ten, &worth.best_of_ten_long_run,
                  &worth.best_of_every_way, &worth.all_with_ways, &worth.all})
                rows.push_back(other->row());
            report.table({"", "slides answer", "worst tenth", "as heard", "worst tenth", "above knowing all"},
                         rows);
            report.paragraph(fmt::format(
                "By the mm alone the program expects {:.1f}, {:.1f} and {:.1f} cents after five, "
                "ten and twenty "
                "notes; it came to {:.1f}, {:.1f} and {:.1f}. Of the best that ten notes allow {:.1f} is "
                "expected.",
                worth.expected[0].mean(), worth.expected[1].mean(), worth.expected[2].mean(),
                worth.came[0].mean(), worth.came[1].mean(), worth.came[2].mean(),
                worth.best_expected.mean()));
            judge(report, which, worth, horns >= 300);
            attainable.push_back(attainable_row(which, worth));
            for (std::size_t k = 0; k < readings.size(); ++k) {
                misses.push_back(miss_row(fmt::format("{}, {} notes", which, readings[k]), worth.miss[k]));
                const auto& mm = worth.miss[k].mm;
                const double either = std::min(mm[0].root_mean_square(), mm[1].root_mean_square());
                card_no_worse =
                    card_no_worse && mm[2].root_mean_square() <= (horns >= 300 ? 1.005 : 1.06) * either;
            }
        }
    }
    report.paragraph(
        "**What is attainable.** The first column of the tables above once more, step by step from knowing "
        "everything: every "
        "way of every note read without any noise, so that only the horn and the player are still taken for "
        "one another; "
        "the ten notes so; the ten notes as they are read, with the positions and fingerings that then "
        "minimise the "
        "expected mean |cents| itself, whatever moves and other fingerings cost (no rule can do better in "
        "the mean); "
        "the objective's optimum; and the card with its rule for leaving slides where they are.");
    report.table({"", "everything known", "every way, no noise", "ten notes, no noise",
                  "ten notes, least expected", "every move made", "the card"},
                 attainable);
    report.paragraph(
        "**The card.** How far slides end from where they belong, root mean square in mm: by the mm alone, "
        "by the "
        "reading alone (set, then moved by the whole of any miss), and as the card says.");
    report.table({"", "mm alone", "reading alone", "the card"}, misses);
    report.verdict(card_no_worse,
                   "the card is no worse than either alone, in every row (within half a percent, in a part "
                   "of the run within six).");
}

}  // namespace lowledger::truth
