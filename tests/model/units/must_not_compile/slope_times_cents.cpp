#include "model/units/quantity.h"

using namespace lowledger::units;

#ifdef LOWLEDGER_WRONG
const Cents moved = CentsPerMillimetre(-0.6) * Cents(10.0);
#else
const Cents moved = CentsPerMillimetre(-0.6) * Millimetres(10.0);
#endif
