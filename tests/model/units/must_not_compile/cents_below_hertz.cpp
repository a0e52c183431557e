#include "model/units/hertz.h"

using namespace lowledger::units;

#ifdef LOWLEDGER_WRONG
const bool below = Cents(440.0) < Hertz(442.0);
#else
const bool below = Hertz(440.0) < Hertz(442.0);
#endif
