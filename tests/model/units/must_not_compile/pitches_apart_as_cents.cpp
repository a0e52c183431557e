#include "model/units/pitch.h"

using namespace lowledger::units;

#ifdef LOWLEDGER_WRONG
const Cents up = Pitch(58) - Pitch(46);
#else
const Semitones up = Pitch(58) - Pitch(46);
#endif
