#include "model/units/hertz.h"

using namespace lowledger::units;

#ifdef LOWLEDGER_WRONG
const Hertz octave = Hertz(440.0) + Hertz(440.0);
#else
const Hertz octave = 2.0 * Hertz(440.0);
#endif
