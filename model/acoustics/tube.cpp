#include "model/acoustics/tube.h"

#include <cassert>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "model/acoustics/air.h"
#include "model/units/refusal.h"

namespace lowledger::acoustics {
namespace {

/// c_ref/2 in mm a second: what a fundamental times its length comes to.
double half_reference_speed() {
    return reference_speed_of_sound().value() * 1000.0 / 2.0;
}

}  // namespace

units::Millimetres open_length(units::Hertz f1) {
    return units::Millimetres(half_reference_speed() / f1.value());
}

units::Millimetres ideal_valve_tube(units::Millimetres open, units::Cents lowering) {
    return open * (units::ratio(lowering) - 1.0);
}

units::Millimetres designed_length(const Tube& tube, ValveSet down) {
    units::Millimetres length = tube.open;
    for (std::size_t i = 0; i < tube.valves.size(); ++i) {
        if (down.contains(static_cast<int>(i) + 1)) length += tube.valves[i];
    }
    for (const Loop& loop : tube.loops) {
        if (down.includes(loop.when)) length += loop.tube;
    }
    return length;
}

units::Millimetres sounding_length(const Tube& tube, ValveSet down,
                                   std::span<const units::Millimetres> positions) {
    if (positions.size() != tube.slides.size()) {
        throw units::Refusal("The horn has " + std::to_string(tube.slides.size()) +
                             " tuning slides; give a position for each, not " +
                             std::to_string(positions.size()) + ".");
    }
    units::Millimetres length = designed_length(tube, down);
    for (std::size_t i = 0; i < positions.size(); ++i) {
        const SlideTube& slide = tube.slides[i];
        if (acts(slide, down)) length += slide.legs * slide.bore * (positions[i] - slide.designed);
    }
    return length;
}

units::Hertz partial_frequency(units::Millimetres length, int n) {
    assert(length.value() > 0.0 && n > 0);
    return units::Hertz(n * half_reference_speed() / length.value());
}

units::Cents lean(units::Millimetres length, int n, units::Pitch pitch, units::Hertz a4) {
    return units::interval(units::equal_tempered(pitch, a4), partial_frequency(length, n));
}

units::Cents change_by_tube(units::Millimetres length, units::Millimetres extra) {
    return -units::interval_of_ratio(1.0 + extra / length);
}

units::Millimetres tube_for_change(units::Millimetres length, units::Cents change) {
    return length * (units::ratio(-change) - 1.0);
}

bool acts(const SlideTube& slide, ValveSet down) {
    return !slide.valve || down.contains(*slide.valve);
}

units::CentsPerMillimetre pull_slope(const SlideTube& slide, ValveSet down, units::Millimetres length) {
    if (!acts(slide, down)) return units::CentsPerMillimetre(0.0);
    return units::CentsPerMillimetre(-1200.0 * std::numbers::log2e * slide.legs * slide.bore /
                                     length.value());
}

}  // namespace lowledger::acoustics
