#pragma once

#include "reports/engraving/line_setting.h"

namespace lowledger::engraving {

/// Everything around the notes. Above, each clear of what is below it: fermatas, breath marks, words, the
/// tempo. Below, each in a row of its own: octave signs, dynamics and hairpins, figures, tendencies.
void draw_marks(const Engraver& engraver, LineSetting& setting);

}  // namespace lowledger::engraving
