#pragma once

#include <string>

#include "model/units/quantity.h"

namespace lowledger::units {

/// To the nearest sixteenth of an inch (1 in = 25.4 mm), as a rule shows it.
int in_sixteenths(Millimetres length);

/// Inches and a fraction in lowest terms, of `in_sixteenths`: "3 7/16", "1/2", "0", "-1 1/4".
std::string inch_text(Millimetres length);

}  // namespace lowledger::units
