#include "reports/pages/term_summary.h"

#include <algorithm>

#include "reports/canvas/table.h"
#include "reports/engraving/engraver.h"
#include "reports/pages/flow.h"
#include "reports/pages/listed.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr auto part_gap = 5_mm;
constexpr auto staff_space = 1.3_mm;
constexpr auto tallest_chart = 55_mm;
constexpr int lines_to_write = 3;

class Summary {
  public:
    Summary(const TermSummary& summary, const words::Words& words, const canvas::Faces& faces)
        : summary_(summary),
          words_(words),
          faces_(faces),
          flow_(
              words.say(Sentence::summary_of, {{"name", summary.student.name}, {"term", summary.term.name}}),
              summary.style, words, faces) {}

    canvas::Document made() && {
        flow_.head_of(summary_.facts, summary_.student.name,
                      words_.say(Sentence::summary_title, {{"term", summary_.term.name}}),
                      words_.say(Sentence::notes_span,
                                 {{"first", date(summary_.term.first)}, {"last", date(summary_.term.last)}}));
        put_lessons();
        put_pieces();
        put_practice();
        put_leans();
        heading(Sentence::summary_remark);
        written(summary_.remark);
        heading(Sentence::summary_aims);
        std::string aims = summary_.student.goals;
        if (!summary_.next.empty()) aims += (aims.empty() ? "" : "\n") + summary_.next;
        written(aims);
        return flow_.finished(summary_.facts, summary_.date);
    }

  private:
    [[nodiscard]] std::string date(studio::Date on) const { return words::date_text(words_, on); }
    void heading(Sentence sentence, Millimetres follows = 18_mm) {
        flow_.heading(words_.say(sentence), part_gap, follows);
    }
    void say(const std::string& text) { flow_.text(text, type::body, 0.8_mm); }
    void written(const std::string& text) {
        if (text.empty())
            flow_.blank_lines(lines_to_write, 0_mm);
        else
            say(text);
    }
    void counted(Sentence one, Sentence many, int count) {
        if (count > 0) say(words_.say_counted(one, many, count));
    }

    void put_lessons() {
        const auto& lessons = summary_.lessons;
        heading(Sentence::summary_lessons);
        if (lessons.kept + lessons.missed + lessons.cancelled == 0)
            say(words_.say(Sentence::summary_no_lessons));
        counted(Sentence::summary_kept_one, Sentence::summary_kept_many, lessons.kept);
        counted(Sentence::summary_missed_one, Sentence::summary_missed_many, lessons.missed);
        counted(Sentence::summary_cancelled_one, Sentence::summary_cancelled_many, lessons.cancelled);
        counted(Sentence::summary_make_up_one, Sentence::summary_make_up_many, lessons.to_make_up);
    }

    void put_pieces() {
        heading(Sentence::summary_pieces);
        if (summary_.pieces.empty()) say(words_.say(Sentence::summary_no_pieces));
        for (const auto& piece : summary_.pieces)
            say(listed({piece.title, piece.composer, piece.part}));
    }

    void put_practice() {
        heading(Sentence::summary_practice);
        if (summary_.routines.empty()) {
            say(words_.say(Sentence::summary_no_practice));
            return;
        }
        canvas::Table table{.columns = {{words_.say(Sentence::summary_routine), canvas::Align::left, 1.0},
                                        {words_.say(Sentence::summary_days_set), canvas::Align::right},
                                        {words_.say(Sentence::summary_days_ticked), canvas::Align::right}},
                            .rows = {},
                            .head = type::strong,
                            .body = type::body};
        for (const auto& routine : summary_.routines)
            // A routine of a group may be ticked nowhere: no nought stands against the student.
            table.rows.push_back({routine.title, std::to_string(routine.days.due),
                                  routine.days.done == 0 ? "\u2013" : std::to_string(routine.days.done)});
        flow_.table(table, 1_mm);
        flow_.text(words_.say(Sentence::summary_practice_how), type::small, 1_mm);
    }

    [[nodiscard]] std::string sheet_text(const TermSummary::Sheet& sheet, const std::string& horn) const {
        return words_.say(Sentence::summary_sheet,
                          {{"date", date(sheet.on)},
                           {"horn", horn},
                           {"within", std::to_string(sheet.within)},
                           {"notes", words_.say_counted(Sentence::summary_notes_one,
                                                        Sentence::summary_notes_many, sheet.notes)},
                           {"tolerance", std::to_string(words::whole_cents(tolerance_))},
                           {"readings", words_.say_counted(Sentence::readings_one, Sentence::readings_many,
                                                           sheet.readings)}});
    }

    void put_leans() {
        heading(Sentence::summary_tuning);
        if (summary_.leans.empty()) say(words_.say(Sentence::summary_no_tuning));
        for (const auto& leans : summary_.leans) {
            tolerance_ = leans.chart.tolerance;
            if (leans.then) say(sheet_text(*leans.then, leans.horn));
            say(sheet_text(leans.now, leans.horn));
            put_chart(leans.chart);
        }
        if (!summary_.leans.empty()) flow_.text(words_.say(Sentence::summary_chart_how), type::small, 1_mm);
    }

    void put_chart(const charts::LeanChart& chart) {
        if (chart.notes.empty()) return;
        const engraving::Engraver engraver(faces_, staff_space);
        const Millimetres width = flow_.live().width;
        const Millimetres height =
            std::max(charts::least_lean_chart_height(engraver, chart, width),
                     std::min(charts::lean_chart_height(engraver, chart, width), tallest_chart));
        const canvas::Point at = flow_.place(height, 2_mm);
        charts::draw_lean_chart(flow_.sheet().page, engraver, chart, {at.x, at.y, width, height});
    }

    const TermSummary& summary_;
    const words::Words& words_;
    const canvas::Faces& faces_;
    Flow flow_;
    units::Cents tolerance_;
};

}  // namespace

canvas::Document term_summary(const TermSummary& summary, const words::Words& words,
                              const canvas::Faces& faces) {
    return Summary(summary, words, faces).made();
}

}  // namespace lowledger::pages
