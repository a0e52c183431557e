#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/horns/kind.h"
#include "model/studio/due.h"
#include "model/studio/people.h"
#include "model/studio/records.h"
#include "model/studio/timetable.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/charts/lean_chart.h"
#include "reports/pages/page_style.h"
#include "reports/words/words.h"

namespace lowledger::pages {

/// A student's term, told to the parents.
struct TermSummary {
    struct Lessons {
        int kept = 0;
        int missed = 0;
        int cancelled = 0;
        int to_make_up = 0;
    };
    struct Practised {
        std::string title;
        studio::PracticeCount days;
    };
    /// One sheet as it is counted here.
    struct Sheet {
        studio::Date on;
        int readings = 0;
        int notes = 0;
        int within = 0;
    };
    /// The first and the last sheet of the term on one horn.
    struct Leans {
        std::string horn;
        /// Empty where the term has a single sheet.
        std::optional<Sheet> then;
        Sheet now;
        /// `before` is then, `after` is now.
        charts::LeanChart chart;
    };
    studio::StudioFacts facts;
    studio::Date date;
    studio::Student student;
    studio::Term term;
    Lessons lessons;
    std::vector<studio::Piece> pieces;
    std::vector<Practised> routines;
    std::vector<Leans> leans;
    /// The teacher's; empty: lines to write it on.
    std::string remark{};
    /// For next time, as it was last told; beside the student's goals.
    std::string next{};
    PageStyle style{};
};

/// Lessons, what was worked on, practice, the notes' leans then and now with how much stands behind them, a
/// remark, next aims.
canvas::Document term_summary(const TermSummary& summary, const words::Words& words,
                              const canvas::Faces& faces);

}  // namespace lowledger::pages
