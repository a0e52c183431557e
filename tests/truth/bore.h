#pragma once

#include "tests/truth/world.h"

namespace lowledger::truth {

/// Leans of partials 1 to 12 of a brass bore, computed as a transmission line: a mouthpiece (a volume and a
/// constriction), a cylinder that takes all added tube, a flare that ends in a bell, each piece with losses
/// at the wall, the bell's end radiating. Of the resonances of the input impedance; against one effective
/// length that fits the second to eighth partial with no valve down.
///
/// Formulas: N. H. Fletcher and T. D. Rossing, The Physics of Musical Instruments, 2nd ed. 1998, section 8.2
/// (equations 8.13 to 8.17, wall losses) and 8.5 (conical and cylindrical pieces), 14.2 (Bessel horn); from
/// memory, section numbers too.
BoreLean transmission_line_bore();

}  // namespace lowledger::truth
