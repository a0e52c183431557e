#include "tests/truth/world.h"

#include <algorithm>
#include <cmath>

#include "model/horns/chart.h"
#include "model/horns/hand_slide.h"

namespace lowledger::truth {
namespace {

using tuning::figures;

/// What a drawn number is of.
enum What : int {
    horn_overall,
    valve_tube,
    horn_by_partial,
    kind_by_partial,
    horn_by_set_and_partial,
    mouthpiece_itself,
    player_overall,
    player_slope,
    player_by_partial,
    player_by_pitch,
    arm_itself,
    corrects_more,
    bore_of_slide,
    still_warming,
    beta,
    place_written,
    whole_sitting,
    tuner_itself,
    note_that_day,
    one_take,
};

double spread_of_valve(int valve) {
    const auto& tubes = figures().valve_tubes;
    return tubes[std::min(static_cast<std::size_t>(valve), tubes.size()) - 1].value();
}

double spread_of_partial(int partial) {
    if (partial == 1) return figures().horn_pedal.value();
    return (partial >= 9 ? figures().horn_by_high_partial : figures().horn_by_partial).value();
}

/// A number for a fingering.
int number_of(const horns::Fingering& fingering) {
    int number = fingering.position;
    for (const int valve : fingering.valves.valves())
        number = number * 10 + valve;
    return number;
}

}  // namespace

World::World(const horns::HornKind& kind, studio::Level level, std::vector<studio::Date> days, WorldLaw law,
             std::uint64_t seed)
    : kind_(kind),
      level_(level),
      of_level_(figures().of(level)),
      days_(std::move(days)),
      law_(std::move(law)),
      draw_(seed),
      tube_(horns::tube_of(kind)) {
    // A valve's tube is off by so many cents on that valve's own note: it is shorter where that is sharp.
    for (std::size_t v = 0; v < tube_.valves.size(); ++v) {
        const int valve = static_cast<int>(v) + 1;
        const units::Millimetres own = acoustics::designed_length(tube_, acoustics::ValveSet{valve});
        const double cents = law_.wider * spread_of_valve(valve) * draw_.normal({valve_tube, valve});
        tube_.valves[v] += acoustics::tube_for_change(own, units::Cents(cents));
    }
    for (std::size_t i = 0; i < tube_.slides.size(); ++i) {
        tube_.slides[i].bore +=
            law_.wider * figures().bore_spread * draw_.normal({bore_of_slide, static_cast<std::int64_t>(i)});
    }
}

Places World::truly(const Places& written) const {
    Places places;
    for (std::size_t i = 0; i < kind_.slides.size(); ++i) {
        const units::Millimetres at = written.at(kind_.slides[i].id);
        const auto tenths = static_cast<std::int64_t>(std::lround(10.0 * at.value()));
        const double error = draw_.normal({place_written, static_cast<std::int64_t>(i), tenths});
        places[kind_.slides[i].id] = at + error * figures().position_measured;
    }
    return places;
}

units::Millimetres World::length(const Played& played, const Places& truly) const {
    std::vector<units::Millimetres> at;
    for (const horns::SlideKind& slide : kind_.slides)
        at.push_back(truly.at(slide.id));
    const units::Millimetres hand_slide = horns::plain_position(kind_, played.fingering) + played.further_out;
    return acoustics::sounding_length(tube_, played.fingering.valves, at) + 2.0 * hand_slide;
}

units::Cents World::horn(const Played& played, const Places& truly, int mouthpiece) const {
    const units::Millimetres length = this->length(played, truly);
    units::Cents lean = acoustics::lean(length, played.partial, played.note);
    if (law_.bore) lean += law_.bore(length / tube_.open, played.partial);
    const int n = played.partial;
    const double varies = figures().horn_overall.value() * draw_.normal({horn_overall}) +
                          spread_of_partial(n) * draw_.normal({horn_by_partial, n}) +
                          figures().kind_by_partial.value() * draw_.normal({kind_by_partial, n}) +
                          figures().horn_by_set_and_partial.value() *
                              draw_.normal({horn_by_set_and_partial, n, number_of(played.fingering)}) +
                          figures().mouthpiece.value() * draw_.normal({mouthpiece_itself, mouthpiece});
    return lean + units::Cents(law_.wider * varies);
}

/// Of a first-order autoregression with the level's half-life, sampled on `days_`.
double World::player_number(int what, int which, double spread, studio::Date on) const {
    double value = draw_.normal({what, which, 0});
    for (std::size_t k = 1; k < days_.size() && days_[k] <= on; ++k) {
        const double kept = std::exp2(-(days_[k] - days_[k - 1]) / of_level_.half_life_days);
        value = kept * value +
                std::sqrt(1.0 - kept * kept) * draw_.normal({what, which, static_cast<std::int64_t>(k)});
    }
    return law_.wider * spread * value;
}

double World::player(const Played& played, studio::Date on) const {
    const double octaves = (played.note - kind_.band_note).count / 12.0;
    return player_number(player_overall, 0, of_level_.player_overall.value(), on) +
           octaves * player_number(player_slope, 0, of_level_.player_slope.value(), on) +
           player_number(player_by_partial, played.partial, of_level_.player_by_partial.value(), on) +
           player_number(player_by_pitch, played.note.midi(), of_level_.player_by_pitch.value(), on);
}

double World::kappa(bool tuner_seen) const {
    return law_.kappa.value_or(tuner_seen ? of_level_.kappa_seen : of_level_.kappa);
}

/// What the player leaves of the horn's lean: of what slides were moved by, a player's own part; of the rest
/// the level's.
units::Cents World::kept_of_horn(const Played& played, const Places& truly, int mouthpiece,
                                 bool tuner_seen) const {
    const units::Cents now = horn(played, truly, mouthpiece);
    units::Cents kept = (1.0 - kappa(tuner_seen)) * now;
    if (used_to_ && !law_.kappa) {
        const double more = law_.wider * of_level_.kappa_spread * draw_.normal({corrects_more});
        kept -= more * (now - horn(played, *used_to_, mouthpiece));
    }
    return kept;
}

/// First is the slide all the way in; other positions are where the arm puts them.
units::Cents World::arm(const Played& played, const Places& truly, studio::Date on) const {
    const int position = played.fingering.position;
    if (position <= 1) return units::Cents(0.0);
    const units::Millimetres out(player_number(arm_itself, position, of_level_.arm.value(), on));
    return acoustics::change_by_tube(length(played, truly), 2.0 * out);
}

units::Cents World::answered(const Played& played, const Places& truly, int mouthpiece) const {
    const double overall = player_number(player_overall, 0, of_level_.player_overall.value(), today());
    return horn(played, truly, mouthpiece) + units::Cents(of_level_.gamma * overall);
}

units::Cents World::heard(const Played& played, const Places& truly, int mouthpiece) const {
    return kept_of_horn(played, truly, mouthpiece, false) + arm(played, truly, today()) +
           units::Cents(player(played, today()));
}

units::Cents World::shown(const Sitting& sitting, const Played& played, int take) const {
    const double room_beta = figures().room_beta + figures().room_beta_spread * draw_.normal({beta});
    constexpr double usual_room_kelvins = 294.15;
    const double room = room_beta * 600.0 * std::log2(sitting.room.absolute().value() / usual_room_kelvins);
    const double tuner = 1200.0 * std::log2(units::standard_a4 / sitting.tuner_a4);
    units::Cents cents = kept_of_horn(played, sitting.places, sitting.mouthpiece, sitting.tuner_seen) +
                         arm(played, sitting.places, sitting.on) +
                         units::Cents(player(played, sitting.on) + room + tuner);
    const int s = sitting.number;
    const int note = played.note.midi();
    const int set = number_of(played.fingering);
    cents += draw_.normal({whole_sitting, s}) * of_level_.sitting;
    cents += draw_.normal({tuner_itself, s}) * figures().tuner;
    cents += draw_.normal({note_that_day, s, note, set}) * of_level_.note_by_sitting;
    if (sitting.rounds > 0) {
        cents += (take - sitting.rounds) * draw_.normal({still_warming, s}) * figures().warming;
    }
    cents += draw_.normal({one_take, s, note, set, take}) * of_level_.take;
    return cents;
}

Played way_of(const horns::HornKind& kind, units::Pitch note, const horns::Fingering& fingering) {
    return {note, fingering, horns::sounding_partial(kind, fingering, note)->partial};
}

Played usual_way(const horns::HornKind& kind, units::Pitch note) {
    const horns::Way way = horns::chart_note(kind, note)->usual;
    return {note, way.fingering, way.partial};
}

std::vector<Played> tuning_notes(const horns::HornKind& kind) {
    std::vector<Played> notes;
    for (const horns::TuningStep& step : kind.tuning_order)
        notes.push_back(way_of(kind, step.note, step.fingering));
    return notes;
}

Places designed_places(const horns::HornKind& kind) {
    Places places;
    for (const horns::SlideKind& slide : kind.slides)
        places[slide.id] = slide.designed;
    return places;
}

studio::TuningSheet sheet_of(const World& world, Sitting sitting, const Places& written,
                             const std::vector<Played>& notes, int takes) {
    sitting.rounds = takes;
    studio::TuningSheet sheet{.id = {},
                              .student = {},
                              .horn = {},
                              .on = sitting.on,
                              .mouthpiece = sitting.mouthpiece == 0 ? "" : "another",
                              .tuner_seen = sitting.tuner_seen,
                              .room = {},
                              .tuner_a4 = sitting.tuner_a4,
                              .positions = written,
                              .readings = {},
                              .remarks = {}};
    sheet.id.number = sitting.number;
    if (sitting.room_written) sheet.room = sitting.room;
    for (int take = 1; take <= takes; ++take) {
        for (const Played& played : notes) {
            const units::Cents cents = world.shown(sitting, played, take);
            // A semitone off is another note to whoever reads it.
            if (units::abs(cents) >= units::Cents(100.0)) continue;
            sheet.readings.push_back({played.note, played.fingering, played.partial, take, cents});
        }
    }
    return sheet;
}

tuning::TuningInputs inputs_for(const World& world, const Places& written) {
    tuning::TuningInputs inputs{.kind = world.kind(), .level = world.level(), .today = world.today()};
    for (const horns::SlideKind& slide : world.kind().slides)
        inputs.slides.push_back({slide.id, slide.least, slide.travel, false});
    inputs.positions = written;
    return inputs;
}

}  // namespace lowledger::truth
