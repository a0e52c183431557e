#include "model/units/celsius.h"

using namespace lowledger::units;

#ifdef LOWLEDGER_WRONG
const Celsius warmer = Celsius(20.0) + Celsius(3.0);
#else
const Celsius warmer = Celsius(20.0) + Kelvins(3.0);
#endif
