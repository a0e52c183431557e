#pragma once

#include "reports/engraving/line_setting.h"

namespace lowledger::engraving {

/// Ties on the heads' side, from head to head; slurs above unless all stems go up, clear of heads, stems and
/// ties. One that goes on over the system's end is drawn to it, and on the next from its start.
void draw_curves(const Engraver& engraver, LineSetting& setting);

}  // namespace lowledger::engraving
