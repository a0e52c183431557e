#include "model/horns/chart.h"

#include <algorithm>
#include <array>
#include <tuple>

#include "model/horns/hand_slide.h"
#include "model/units/hertz.h"

namespace lowledger::horns {
namespace {

constexpr int last_partial = 16;
constexpr units::Cents furthest_lean{75.0};

/// Our estimates, in cents of lean that a player would accept to be spared it.
constexpr std::array<double, 8> cost_of_valve = {1.0, 1.0, 3.0, 3.0, 3.0, 4.0, 5.0, 5.0};
constexpr double cost_of_second_finger = 1.0;
constexpr double cost_of_further_finger = 8.0;
constexpr double cost_of_trigger = 3.0;
constexpr double cost_of_position = 5.0;
constexpr double cost_of_pedal = 5.0;
/// The 7th, 11th, 13th and 14th partials lie far from the scale.
constexpr double cost_of_strange_partial = 10.0;
/// What remains of a cent when the hand slide can place the note.
constexpr double share_where_slide_places = 0.3;

/// How a chart weighs a lean against easy hands: lean^2 over this.
constexpr double chart_lean_scale = 120.0;

/// A false tone sounds about a fifth below the second partial: 2 (2/3) of the fundamental.
constexpr double false_tone_ratio = 4.0 / 3.0;

double cost_of_hands(const Fingering& fingering) {
    const auto down = fingering.valves.valves();
    if (fingering.position > 0) {
        return cost_of_position * (fingering.position - 1) +
               cost_of_trigger * static_cast<double>(down.size());
    }
    double cost = 0.0;
    for (std::size_t i = 0; i < down.size(); ++i) {
        cost += cost_of_valve.at(static_cast<std::size_t>(down[i] - 1));
        if (i == 1) cost += cost_of_second_finger;
        if (i > 1) cost += cost_of_further_finger;
    }
    return cost;
}

double cost_of_tone(const Way& way) {
    const int n = way.partial;
    if (n == 1) return cost_of_pedal;
    return n == 7 || n == 11 || n == 13 || n == 14 ? cost_of_strange_partial : 0.0;
}

/// The hand slide brings a note in tune unless it is flat with the slide in.
bool slide_places(const HornKind& kind, const Way& way) {
    if (!kind.hand_slide || !way.within_reach) return false;
    return plain_position(kind, way.fingering) + slide_offset(kind, way.fingering, way.lean) >=
           units::Millimetres(0.0);
}

units::Cents cost(const HornKind& kind, const Way& way) {
    const double share = slide_places(kind, way) ? share_where_slide_places : 1.0;
    return share * units::abs(way.lean) + units::Cents(cost_of_hands(way.fingering) + cost_of_tone(way));
}

std::vector<Fingering> all_fingerings(const HornKind& kind) {
    std::vector<Fingering> all;
    const int sets = 1 << kind.valves.size();
    for (int bits = 0; bits < sets; ++bits) {
        acoustics::ValveSet down;
        for (int valve = 1; valve <= static_cast<int>(kind.valves.size()); ++valve) {
            if ((bits >> (valve - 1)) & 1) down = down.with(valve);
        }
        for (int position = kind.hand_slide ? 1 : 0; position <= (kind.hand_slide ? last_position : 0);
             ++position) {
            const Fingering fingering{down, position};
            if (kind.allows(fingering)) all.push_back(fingering);
        }
    }
    return all;
}

std::vector<Way> ways_of(const HornKind& kind, const Fingering& fingering, units::Pitch note) {
    const units::Millimetres length = designed_length(kind, fingering);
    std::vector<Way> ways;
    const auto add = [&](int partial, Tone tone, units::Cents lean) {
        if (units::abs(lean) > furthest_lean) return;
        Way way{fingering, partial, tone, lean, within_reach(kind, fingering, lean), {}};
        way.cost = cost(kind, way);
        ways.push_back(way);
    };
    for (int n = 1; n <= last_partial; ++n)
        add(n, n == 1 ? Tone::pedal : Tone::partial, acoustics::lean(length, n, note));
    if (!kind.hand_slide) {
        add(1, Tone::false_tone,
            acoustics::lean(length, 1, note) + units::interval_of_ratio(false_tone_ratio));
    }
    return ways;
}

/// Charts go by the partials that every student learns; the ninth only where the slide places it. A
/// trombone's valves are for the low notes: their second and third partials.
bool chart_goes_by(const HornKind& kind, const Way& way) {
    if (kind.hand_slide && !way.fingering.valves.empty()) return way.partial == 2 || way.partial == 3;
    constexpr std::array<int, 9> partials = {1, 2, 3, 4, 5, 6, 8, 10, 12};
    return std::ranges::find(partials, way.partial) != partials.end() || way.partial == 16 ||
           (way.partial == 9 && kind.hand_slide);
}

double chart_cost(const Way& way) {
    return cost_of_hands(way.fingering) + cost_of_tone(way) +
           units::square(way.lean).value() / chart_lean_scale;
}

using WayIterator = std::vector<Way>::iterator;

WayIterator taught_way(const HornKind& kind, units::Pitch note, std::vector<Way>& ways) {
    const auto taught = kind.taught.find(note);
    if (taught == kind.taught.end()) return ways.end();
    return std::ranges::find(ways, taught->second, &Way::fingering);
}

/// The first way if none lies on a partial that charts go by.
WayIterator easiest_chart_way(const HornKind& kind, std::vector<Way>& ways) {
    auto best = ways.end();
    for (auto way = ways.begin(); way != ways.end(); ++way) {
        if (!way->within_reach || way->tone == Tone::false_tone || !chart_goes_by(kind, *way)) continue;
        if (best == ways.end() || chart_cost(*way) < chart_cost(*best)) best = way;
    }
    return best == ways.end() ? ways.begin() : best;
}

}  // namespace

std::vector<Way> possible_fingerings(const HornKind& kind, units::Pitch note) {
    std::vector<Way> ways;
    for (const Fingering& fingering : all_fingerings(kind)) {
        const auto more = ways_of(kind, fingering, note);
        ways.insert(ways.end(), more.begin(), more.end());
    }
    std::ranges::stable_sort(ways, {}, [](const Way& way) {
        return std::tuple(!way.within_reach, way.tone == Tone::false_tone, way.cost, way.fingering,
                          way.partial);
    });
    return ways;
}

std::optional<ChartNote> chart_note(const HornKind& kind, units::Pitch note) {
    std::vector<Way> ways = possible_fingerings(kind, note);
    if (ways.empty()) return std::nullopt;
    auto usual = taught_way(kind, note, ways);
    UsualBecause because = UsualBecause::taught;
    if (usual == ways.end()) {
        usual = easiest_chart_way(kind, ways);
        because =
            chart_goes_by(kind, ways.front()) ? UsualBecause::easier_hands : UsualBecause::chart_partials;
    }
    if (usual == ways.begin()) because = UsualBecause::ranks_first;
    ChartNote entry{note, *usual, because, {}};
    ways.erase(usual);
    entry.alternates = std::move(ways);
    return entry;
}

std::vector<ChartNote> chart(const HornKind& kind) {
    std::vector<ChartNote> notes;
    for (int midi = kind.usual_range.low.midi(); midi <= kind.usual_range.high.midi(); ++midi) {
        if (auto note = chart_note(kind, units::Pitch(midi))) notes.push_back(std::move(*note));
    }
    return notes;
}

std::optional<PartialLean> sounding_partial(const HornKind& kind, const Fingering& fingering,
                                            units::Pitch note, units::Cents most) {
    if (!kind.allows(fingering)) return std::nullopt;
    const units::Millimetres length = designed_length(kind, fingering);
    PartialLean best{1, acoustics::lean(length, 1, note)};
    for (int n = 2; n <= last_partial; ++n) {
        const units::Cents lean = acoustics::lean(length, n, note);
        if (units::abs(lean) < units::abs(best.lean)) best = {n, lean};
    }
    if (units::abs(best.lean) > most) return std::nullopt;
    return best;
}

}  // namespace lowledger::horns
