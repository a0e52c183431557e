#include "model/tuning/terms.h"

#include <algorithm>
#include <cmath>

#include "model/horns/hand_slide.h"

namespace lowledger::tuning {
namespace {

/// The valves as a number, a bit each.
int bits_of(acoustics::ValveSet valves) {
    int bits = 0;
    for (const int valve : valves.valves())
        bits |= 1 << valve;
    return bits;
}

}  // namespace

TermOwner owner_of(TermKind kind) {
    switch (kind) {
        case TermKind::kind_by_partial:
            return TermOwner::kind;
        case TermKind::horn_overall:
        case TermKind::valve_tube:
        case TermKind::horn_by_partial:
        case TermKind::horn_by_set_and_partial:
        case TermKind::bore:
        case TermKind::place_written:
        case TermKind::place_guessed:
            return TermOwner::horn;
        case TermKind::mouthpiece:
        case TermKind::player_overall:
        case TermKind::player_slope:
        case TermKind::player_by_partial:
        case TermKind::player_by_pitch:
        case TermKind::arm:
        case TermKind::correction:
            return TermOwner::player;
        case TermKind::room_beta:
        case TermKind::place_at_sitting:
        case TermKind::room_of_sitting:
        case TermKind::sitting:
        case TermKind::tuner_of_sitting:
        case TermKind::warming:
            break;
    }
    return TermOwner::sitting;
}

TermModel::TermModel(const horns::HornKind& kind, studio::Level level, const Figures& figures,
                     units::Hertz a4, Owners owners)
    : kind_(kind),
      figures_(figures),
      level_(figures.of(level)),
      a4_(a4),
      owners_(owners),
      tube_(horns::tube_of(kind)) {}

units::Millimetres TermModel::length(const Playing& playing) const {
    return acoustics::sounding_length(tube_, playing.fingering.valves, playing.positions) +
           2.0 * horns::plain_position(kind_, playing.fingering);
}

units::Millimetres TermModel::own_length(int valve) const {
    return acoustics::designed_length(tube_, acoustics::ValveSet{valve});
}

units::Cents TermModel::acoustic_lean(const Playing& playing) const {
    return acoustics::lean(length(playing), playing.partial, playing.note, a4_);
}

std::vector<units::CentsPerMillimetre> TermModel::pull_slopes(const Playing& playing) const {
    const units::Millimetres in_use = length(playing);
    std::vector<units::CentsPerMillimetre> slopes;
    for (const acoustics::SlideTube& slide : tube_.slides)
        slopes.push_back(acoustics::pull_slope(slide, playing.fingering.valves, in_use));
    return slopes;
}

units::CentsPerMillimetre TermModel::arm_slope(const Playing& playing) const {
    if (!kind_.hand_slide) return units::CentsPerMillimetre(0.0);
    const acoustics::SlideTube hand_slide;
    return acoustics::pull_slope(hand_slide, playing.fingering.valves, length(playing));
}

Terms TermModel::terms(const Playing& playing, const Shares& shares, int mouthpiece) const {
    const int partial = playing.partial;
    const int set = bits_of(playing.fingering.valves) + (playing.fingering.position << 10);
    Terms terms;
    add(terms, {TermKind::horn_overall}, shares.horn);
    const units::Millimetres in_use = length(playing);
    // A tube's error is told in cents on the valve's own note; with other valves it is a smaller part of the
    // length.
    for (const int valve : playing.fingering.valves.valves())
        add(terms, {TermKind::valve_tube, valve}, shares.horn * (own_length(valve) / in_use));
    add(terms, {TermKind::horn_by_partial, partial}, shares.horn);
    add(terms, {TermKind::kind_by_partial, partial}, shares.horn);
    add(terms, {TermKind::horn_by_set_and_partial, partial, set}, shares.horn);
    add(terms, {TermKind::mouthpiece, mouthpiece}, shares.horn);
    const auto slopes = pull_slopes(playing);
    for (std::size_t i = 0; i < slopes.size(); ++i) {
        const units::Millimetres pulled = playing.positions[i] - tube_.slides[i].designed;
        add(terms, {TermKind::bore, static_cast<int>(i)}, shares.horn * (slopes[i] * pulled).value());
    }
    const double octaves = (playing.note - kind_.band_note).count / 12.0;
    add(terms, {TermKind::player_overall}, shares.player_overall);
    add(terms, {TermKind::player_slope}, shares.player_slope * octaves);
    add(terms, {TermKind::player_by_partial, partial}, shares.player_notes);
    add(terms, {TermKind::player_by_pitch, playing.note.midi()}, shares.player_notes);
    // In first the slide is closed.
    if (playing.fingering.position > 1) {
        add(terms, {TermKind::arm, playing.fingering.position}, shares.arm * arm_slope(playing).value());
    }
    return terms;
}

TermKey TermModel::owned(TermKey key) const {
    switch (owner_of(key.kind)) {
        case TermOwner::kind:
            key.whose = owners_.kind;
            break;
        case TermOwner::horn:
            key.whose = owners_.horn;
            break;
        case TermOwner::player:
            key.whose = owners_.player;
            break;
        case TermOwner::sitting:
            break;
    }
    return key;
}

void TermModel::add(Terms& terms, const TermKey& key, double coefficient) const {
    const TermKey own = owned(key);
    add_term(terms, own, coefficient, law(own));
}

TermLaw TermModel::law(const TermKey& key) const {
    const double half_life = level_.half_life_days;
    const auto valve_tube = [&] {
        const auto last = figures_.valve_tubes.size() - 1;
        return figures_.valve_tubes[std::min(static_cast<std::size_t>(key.a - 1), last)].value();
    };
    const auto by_partial = [&] {
        if (key.a == 1) return figures_.horn_pedal.value();
        constexpr int first_high_partial = 9;
        return (key.a < first_high_partial ? figures_.horn_by_partial : figures_.horn_by_high_partial)
            .value();
    };
    switch (key.kind) {
        case TermKind::horn_overall:
            return {figures_.horn_overall.value()};
        case TermKind::valve_tube:
            return {valve_tube()};
        case TermKind::horn_by_partial:
            return {by_partial()};
        case TermKind::kind_by_partial:
            return {figures_.kind_by_partial.value()};
        case TermKind::horn_by_set_and_partial:
            return {figures_.horn_by_set_and_partial.value()};
        case TermKind::mouthpiece:
            return {figures_.mouthpiece.value()};
        case TermKind::player_overall:
            return {level_.player_overall.value(), half_life};
        case TermKind::player_slope:
            return {level_.player_slope.value(), half_life};
        case TermKind::player_by_partial:
            return {level_.player_by_partial.value(), half_life};
        case TermKind::player_by_pitch:
            return {level_.player_by_pitch.value(), half_life};
        case TermKind::arm:
            return {level_.arm.value(), half_life};
        case TermKind::correction:
            return {level_.kappa_spread};
        case TermKind::bore:
            return {figures_.bore_spread};
        case TermKind::room_beta:
            return {figures_.room_beta_spread};
        case TermKind::place_written:
            return {figures_.position_measured.value()};
        case TermKind::place_guessed:
            return {figures_.position_unknown.value()};
        case TermKind::place_at_sitting:
            return {figures_.position_as_left.value()};
        case TermKind::room_of_sitting:
            return {figures_.room_unknown.value()};
        case TermKind::sitting:
            return {level_.sitting.value()};
        case TermKind::tuner_of_sitting:
            return {figures_.tuner.value()};
        case TermKind::warming:
            return {figures_.warming.value()};
    }
    return {};
}

void add_term(Terms& terms, const TermKey& key, double coefficient, const TermLaw& law) {
    if (coefficient == 0.0) return;
    const auto at = std::ranges::lower_bound(terms, key, {}, &Term::key);
    if (at != terms.end() && at->key == key) {
        at->coefficient += coefficient;
    } else {
        terms.insert(at, Term{key, coefficient, law});
    }
}

double shared_variance(const Terms& one, const Terms& other, int days) {
    double sum = 0.0;
    auto b = other.begin();
    for (const Term& a : one) {
        while (b != other.end() && b->key < a.key)
            ++b;
        if (b == other.end()) break;
        if (b->key != a.key) continue;
        const double kept =
            a.law.half_life > 0.0 && days != 0 ? std::exp2(-std::abs(days) / a.law.half_life) : 1.0;
        sum += a.coefficient * b->coefficient * a.law.spread * a.law.spread * kept;
    }
    return sum;
}

}  // namespace lowledger::tuning
