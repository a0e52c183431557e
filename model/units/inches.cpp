#include "model/units/inches.h"

#include <cmath>
#include <cstdlib>
#include <numeric>

namespace lowledger::units {

int in_sixteenths(Millimetres length) {
    return static_cast<int>(std::lround(length.value() / 25.4 * 16.0));
}

std::string inch_text(Millimetres length) {
    const int sixteenths = in_sixteenths(length);
    const int whole = std::abs(sixteenths) / 16;
    const int rest = std::abs(sixteenths) % 16;
    std::string text = sixteenths < 0 ? "-" : "";
    if (whole > 0 || rest == 0) text += std::to_string(whole);
    if (rest == 0) return text;
    if (whole > 0) text += ' ';
    const int common = std::gcd(rest, 16);
    return text + std::to_string(rest / common) + "/" + std::to_string(16 / common);
}

}  // namespace lowledger::units
