#include "model/units/hertz.h"

#include <cmath>

namespace lowledger::units {

double ratio(Cents by) {
    return std::exp2(by.value() / 1200.0);
}

Cents interval_of_ratio(double r) {
    return Cents(1200.0 * std::log2(r));
}

Cents interval(Hertz a, Hertz b) {
    return interval_of_ratio(b / a);
}

Hertz raised(Hertz f, Cents by) {
    return f * ratio(by);
}

}  // namespace lowledger::units
