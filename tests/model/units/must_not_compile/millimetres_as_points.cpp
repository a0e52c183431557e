#include "model/units/quantity.h"

using namespace lowledger::units;

#ifdef LOWLEDGER_WRONG
const Points size = Millimetres(3.0);
#else
const Points size = in_points(Millimetres(3.0));
#endif
