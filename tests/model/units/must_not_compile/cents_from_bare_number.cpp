#include "model/units/quantity.h"

using namespace lowledger::units;

#ifdef LOWLEDGER_WRONG
const Cents lean = 5.0;
#else
const Cents lean{5.0};
#endif
