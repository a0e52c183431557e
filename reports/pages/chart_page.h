#pragma once

#include <optional>
#include <string>

#include "model/horns/kind.h"
#include "model/horns/note_style.h"
#include "model/tuning/profile.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/canvas/paper.h"
#include "reports/words/words.h"

namespace lowledger::pages {

/// The horn a chart is of, where it is of one horn in a student's hands.
struct ChartOfHorn {
    std::string mark;
    std::string student;
    tuning::TuningProfile profile;
};

struct ChartInputs {
    const horns::HornKind& kind;
    /// Its reader is one of the kind's.
    horns::NoteStyle style;
    /// Empty: the kind as designed.
    std::optional<ChartOfHorn> horn;
    canvas::Paper paper = canvas::Paper::a4;
    bool large_print = false;
};

/// The fingering or position chart over the usual range: notes on staves, under each its usual way, lean and
/// the other ways; then what is to be said of them and, of a trombone, where its positions lie. On one page
/// where type and staves of a readable size fit one, else on as many numbered pages as it takes.
canvas::Document chart_page(const ChartInputs& inputs, const words::Words& words, const canvas::Faces& faces);

}  // namespace lowledger::pages
