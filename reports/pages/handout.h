#pragma once

#include "model/horns/kind.h"
#include "model/studio/note_style.h"
#include "model/studio/records.h"
#include "model/tuning/answer.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"
#include "reports/canvas/paper.h"
#include "reports/pages/page_style.h"
#include "reports/words/words.h"

namespace lowledger::pages {

/// All that a handout tells.
struct HandoutInputs {
    studio::StudioFacts facts;
    studio::Student student;
    studio::Horn horn;
    horns::HornKind kind;
    tuning::TuningAnswer answer;
    /// The day it is given out.
    studio::Date date;
    canvas::Paper paper = canvas::Paper::a4;
    /// Larger type on two pages, without strips: what is to be cut out must be true to size.
    bool large_print = false;
};

/// What the student takes home: one page, whatever the data; in large print two. With readings of every
/// tuning note it holds the steps, the lean chart, the notes to watch, the band's note and strips to cut out;
/// while readings are missing it says so and has a form to write them in.
canvas::Document handout(const HandoutInputs& inputs, const words::Words& words, const canvas::Faces& faces);

/// How this student's notes are written and named on this horn.
horns::NoteStyle note_style(const HandoutInputs& inputs);

/// The paper that a studio prints on.
canvas::Paper paper_of(const studio::StudioFacts& facts);

}  // namespace lowledger::pages
