#include "model/units/quantity.h"

using namespace lowledger::units;

#ifdef LOWLEDGER_WRONG
const auto sum = Cents(2.0) + Millimetres(3.0);
#else
const auto sum = Cents(2.0) + Cents(3.0);
#endif
