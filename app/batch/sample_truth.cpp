#include "app/batch/sample_truth.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "app/batch/sample_random.h"
#include "model/acoustics/air.h"
#include "model/horns/chart.h"
#include "model/horns/hand_slide.h"

namespace lowledger::batch {

namespace {

/// A horn that was not warmed up is flat, a practice mute makes it sharp (common practice; the sizes are
/// ours).
constexpr units::Cents cold_flat{-22.0};
constexpr units::Cents mute_sharp{14.0};

units::Cents draw(std::uint64_t seed, const std::string& term, units::Cents spread) {
    return SampleRandom(seed, term).normal() * spread;
}

/// Names a fingering in the streams of numbers.
std::string hands(const horns::Fingering& fingering) {
    const std::string position = fingering.position > 0 ? fmt::format(" p{}", fingering.position) : "";
    return fingering.valves.text() + position;
}

/// A way of playing a note.
struct Played {
    units::Pitch note;
    horns::Fingering fingering;
    int partial = 0;
};

void add_once(std::vector<Played>& notes, const Played& played) {
    const bool there = std::any_of(notes.begin(), notes.end(), [&](const Played& known) {
        return known.note == played.note && known.fingering == played.fingering;
    });
    if (!there) notes.push_back(played);
}

/// The tuning order's notes, the open notes that a sheet adds to them, and for a wide sheet the core range.
std::vector<Played> notes_of_sheet(const horns::HornKind& kind, bool wide) {
    std::vector<Played> notes;
    for (const horns::TuningStep& step : kind.tuning_order)
        if (const auto sounding = horns::sounding_partial(kind, step.fingering, step.note))
            add_once(notes, {step.note, step.fingering, sounding->partial});
    for (const horns::ChartNote& chart : horns::chart(kind)) {
        const horns::Way& usual = chart.usual;
        const bool open = usual.fingering.valves.empty() && usual.fingering.position <= 1 &&
                          (usual.partial == 3 || usual.partial == 4);
        if (open || (wide && kind.core_range.contains(chart.note)))
            add_once(notes, {chart.note, usual.fingering, usual.partial});
    }
    return notes;
}

}  // namespace

TrueHorn::TrueHorn(const horns::HornKind& kind, const SampleHorn& told, const tuning::Figures& figures,
                   std::uint64_t seed)
    : tube_(horns::tube_of(kind)), kind_(kind), mark_(told.mark), figures_(figures), seed_(seed) {
    overall_ = told.is ? told.is->overall : drawn("overall", figures.horn_overall);
    for (std::size_t i = 0; i < tube_.valves.size(); ++i) {
        const int valve = static_cast<int>(i) + 1;
        units::Cents longer;
        if (told.is)
            longer = i < told.is->valves.size() ? told.is->valves[i] : units::Cents(0.0);
        else if (i < figures.valve_tubes.size())
            longer = drawn(fmt::format("valve {}", valve), figures.valve_tubes[i]);
        const units::Millimetres alone = acoustics::designed_length(tube_, acoustics::ValveSet{valve});
        tube_.valves[i] += alone * (units::ratio(longer) - 1.0);
    }
}

units::Cents TrueHorn::drawn(const std::string& term, units::Cents spread) const {
    return draw(seed_, fmt::format("horn {} {}", mark_, term), spread);
}

units::Cents TrueHorn::of_partial(int partial) const {
    const units::Cents spread = partial == 1   ? figures_.horn_pedal
                                : partial >= 9 ? figures_.horn_by_high_partial
                                               : figures_.horn_by_partial;
    return drawn(fmt::format("partial {}", partial), spread) +
           draw(seed_, fmt::format("kind {} partial {}", kind_.id, partial), figures_.kind_by_partial);
}

units::Cents TrueHorn::lean(units::Pitch note, const horns::Fingering& fingering, int partial,
                            std::span<const units::Millimetres> positions) const {
    const units::Millimetres length = acoustics::sounding_length(tube_, fingering.valves, positions) +
                                      2.0 * horns::plain_position(kind_, fingering);
    return acoustics::lean(length, partial, note) + overall_ + of_partial(partial) +
           drawn(fmt::format("valves {} partial {}", hands(fingering), partial),
                 figures_.horn_by_set_and_partial);
}

TruePlayer::TruePlayer(std::string_view name, const tuning::LevelFigures& figures, std::uint64_t seed)
    : name_(name), figures_(figures), seed_(seed) {}

units::Cents TruePlayer::drawn(const std::string& term, units::Cents spread) const {
    return draw(seed_, fmt::format("player {} {}", name_, term), spread);
}

units::Cents TruePlayer::habit(units::Pitch note, int partial, units::Pitch from) const {
    const double octaves = (note - from).count / 12.0;
    return drawn("overall", figures_.player_overall) + octaves * drawn("slope", figures_.player_slope) +
           drawn(fmt::format("partial {}", partial), figures_.player_by_partial) +
           drawn(fmt::format("pitch {}", note.midi()), figures_.player_by_pitch);
}

units::Millimetres TruePlayer::arm(int position) const {
    if (position <= 1) return units::Millimetres(0.0);
    return SampleRandom(seed_, fmt::format("player {} arm {}", name_, position)).normal() * figures_.arm;
}

std::vector<studio::Reading> play(const Sitting& sitting, const tuning::Figures& figures,
                                  std::uint64_t seed) {
    const tuning::LevelFigures& level = sitting.player.figures();
    const SampleSheet& told = sitting.told;
    const auto noise = [&](const std::string& term, units::Cents spread) {
        return draw(seed, sitting.stream + " " + term, spread);
    };
    const double corrects = told.tuner_seen ? level.kappa_seen : level.kappa;
    units::Cents common =
        noise("sitting", level.sitting) - units::interval(units::standard_a4, told.tuner_a4);
    if (told.room) common += acoustics::room_change(sitting.usual_room, *told.room, figures.room_beta);
    if (told.cold) common += cold_flat;
    if (told.mute) common += mute_sharp;

    std::vector<studio::Reading> readings;
    const std::vector<Played> notes = notes_of_sheet(sitting.kind, told.wide);
    for (int take = 1; take <= told.takes; ++take)
        for (const Played& played : notes) {
            const std::string name = fmt::format("{} {}", played.note.midi(), hands(played.fingering));
            const units::Cents heard =
                (1.0 - corrects) *
                    sitting.horn.lean(played.note, played.fingering, played.partial, sitting.positions) +
                sitting.player.habit(played.note, played.partial, sitting.kind.band_note) +
                horns::change_by_hand_slide(sitting.kind, played.fingering,
                                            sitting.player.arm(played.fingering.position)) +
                common + noise("note " + name, level.note_by_sitting) +
                noise(fmt::format("take {} of {}", take, name), level.take);
            readings.push_back({played.note, played.fingering, played.partial, take,
                                units::Cents(std::round(heard.value()))});
        }
    return readings;
}

}  // namespace lowledger::batch
