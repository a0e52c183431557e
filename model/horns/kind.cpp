#include "model/horns/kind.h"

#include <algorithm>

#include "model/horns/hand_slide.h"

namespace lowledger::horns {
namespace {

/// Lengths of the valves' tubes. A tube built with others is what is left of the whole lowering; the reader
/// has made sure that no valve waits for itself.
units::Millimetres valve_tube(const HornKind& kind, units::Millimetres open, const ValveKind& valve) {
    units::Millimetres tube = acoustics::ideal_valve_tube(open, valve.built_for);
    for (const int other : valve.built_with.valves())
        tube -= valve_tube(kind, open, kind.valves.at(static_cast<std::size_t>(other - 1)));
    return tube;
}

acoustics::Loop loop_of(const LoopKind& loop, const acoustics::Tube& tube) {
    const auto tube_at = [&](int valve) { return tube.valves.at(static_cast<std::size_t>(valve - 1)); };
    return {acoustics::ValveSet{loop.valve, loop.with},
            tube_at(loop.valve) * (tube_at(loop.with) / tube.open) * loop.share};
}

}  // namespace

std::vector<std::string> HornKind::valve_labels() const {
    std::vector<std::string> labels;
    labels.reserve(valves.size());
    for (const ValveKind& valve : valves)
        labels.push_back(valve.label);
    return labels;
}

std::optional<std::size_t> HornKind::slide_index(std::string_view slide_id) const {
    const auto at = std::ranges::find(slides, slide_id, &SlideKind::id);
    if (at == slides.end()) return std::nullopt;
    return static_cast<std::size_t>(at - slides.begin());
}

const SlideKind* HornKind::slide(std::string_view slide_id) const {
    const auto index = slide_index(slide_id);
    return index ? &slides[*index] : nullptr;
}

bool HornKind::allows(const Fingering& fingering) const {
    if (hand_slide.has_value() != (fingering.position > 0)) return false;
    return std::ranges::all_of(fingering.valves.valves(), [&](int valve) {
        const auto index = static_cast<std::size_t>(valve - 1);
        return index < valves.size() && fingering.valves.includes(valves[index].needs);
    });
}

acoustics::Tube tube_of(const HornKind& kind) {
    acoustics::Tube tube;
    tube.open = acoustics::open_length(units::equal_tempered(kind.fundamental));
    for (const ValveKind& valve : kind.valves)
        tube.valves.push_back(valve_tube(kind, tube.open, valve));
    for (const LoopKind& loop : kind.loops)
        tube.loops.push_back(loop_of(loop, tube));
    for (const SlideKind& slide : kind.slides)
        tube.slides.push_back({slide.valve, slide.legs, 1.0, slide.designed});
    return tube;
}

units::Millimetres designed_length(const HornKind& kind, const Fingering& fingering) {
    return acoustics::designed_length(tube_of(kind), fingering.valves) +
           2.0 * plain_position(kind, fingering);
}

const HornKind* find_kind(std::span<const HornKind> kinds, std::string_view id) {
    const auto at = std::ranges::find(kinds, id, &HornKind::id);
    return at == kinds.end() ? nullptr : &*at;
}

}  // namespace lowledger::horns
