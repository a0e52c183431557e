#include "model/units/quantity.h"

using namespace lowledger::units;

#ifdef LOWLEDGER_WRONG
const Cents cost = square(Cents(3.0));
#else
const SquareCents cost = square(Cents(3.0));
#endif
