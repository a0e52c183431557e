#include "model/units/pitch.h"

using namespace lowledger::units;

#ifdef LOWLEDGER_WRONG
const Pitch octave_up = Pitch(46) + Pitch(12);
#else
const Pitch octave_up = Pitch(46) + Semitones{12};
#endif
