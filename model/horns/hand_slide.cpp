#include "model/horns/hand_slide.h"

#include "model/units/hertz.h"

namespace lowledger::horns {

units::Millimetres plain_position(const HornKind& kind, const Fingering& fingering) {
    if (!kind.hand_slide || fingering.position <= 1) return units::Millimetres(0.0);
    const units::Millimetres in_first = acoustics::designed_length(tube_of(kind), fingering.valves);
    return 0.5 * in_first * (units::ratio(units::Cents(100.0 * (fingering.position - 1))) - 1.0);
}

units::Millimetres slide_offset(const HornKind& kind, const Fingering& fingering, units::Cents lean) {
    return 0.5 * acoustics::tube_for_change(designed_length(kind, fingering), -lean);
}

bool within_reach(const HornKind& kind, const Fingering& fingering, units::Cents lean) {
    if (!kind.hand_slide) return true;
    const units::Millimetres place = plain_position(kind, fingering) + slide_offset(kind, fingering, lean);
    return place <= *kind.hand_slide;
}

}  // namespace lowledger::horns
