#include "model/units/quantity.h"

using namespace lowledger::units;

#ifdef LOWLEDGER_WRONG
const double lean = Cents(5.0);
#else
const double lean = Cents(5.0).value();
#endif
