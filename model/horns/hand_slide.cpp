#include "model/horns/hand_slide.h"

#include "model/units/hertz.h"

namespace lowledger::horns {

units::Millimetres plain_position(const HornKind& kind, const Fingering& fingering) {
    if (!kind.hand_slide || fingering.position <= 1) return units::Millimetres(0.0);
    const units::Millimetres in_first = acoustics::designed_length(tube_of(kind), fingering.valves);
    return 0.5 * in_first * (units::ratio(units::Cents(100.0 * (fingering.position - 1))) - 1.0);
}

std::vector<SlidePlace> slide_places(const HornKind& kind, acoustics::ValveSet valves) {
    std::vector<SlidePlace> places;
    if (!kind.hand_slide) return places;
    for (int position = 1; position <= last_position; ++position) {
        const units::Millimetres out = plain_position(kind, {valves, position});
        places.push_back({position, out, out <= *kind.hand_slide});
    }
    return places;
}

units::Millimetres slide_offset(const HornKind& kind, const Fingering& fingering, units::Cents lean) {
    return 0.5 * acoustics::tube_for_change(designed_length(kind, fingering), -lean);
}

units::Cents change_by_hand_slide(const HornKind& kind, const Fingering& fingering, units::Millimetres out) {
    if (!kind.hand_slide) return units::Cents(0.0);
    return acoustics::change_by_tube(designed_length(kind, fingering), 2.0 * out);
}

bool within_reach(const HornKind& kind, const Fingering& fingering, units::Cents lean) {
    if (!kind.hand_slide) return true;
    const units::Millimetres place = plain_position(kind, fingering) + slide_offset(kind, fingering, lean);
    return place <= *kind.hand_slide;
}

}  // namespace lowledger::horns
