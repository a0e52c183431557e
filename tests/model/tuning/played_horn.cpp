#include "tests/model/tuning/played_horn.h"

#include <algorithm>

#include "model/horns/chart.h"
#include "model/horns/hand_slide.h"

namespace lowledger::tuning {
namespace {

std::vector<units::Millimetres> in_kind_order(const horns::HornKind& kind,
                                              const std::map<std::string, units::Millimetres>& positions) {
    std::vector<units::Millimetres> at;
    for (const horns::SlideKind& slide : kind.slides)
        at.push_back(positions.contains(slide.id) ? positions.at(slide.id) : slide.designed);
    return at;
}

}  // namespace

TuningInputs fresh_inputs(studio::Level level, const std::string& kind) {
    TuningInputs inputs{.kind = *horns::find_kind(horns::built_in_kinds(), kind),
                        .level = level,
                        .today = studio::Date(2026, 3, 2)};
    for (const horns::SlideKind& slide : inputs.kind.slides) {
        inputs.slides.push_back({slide.id, slide.least, slide.travel, false});
        inputs.positions[slide.id] = slide.designed;
    }
    return inputs;
}

units::Cents true_reading(const TuningInputs& inputs, const TrueHorn& horn,
                          const std::map<std::string, units::Millimetres>& positions, units::Pitch note,
                          const horns::Fingering& fingering, double kappa) {
    acoustics::Tube tube = horns::tube_of(inputs.kind);
    tube.open += horn.extra_open;
    for (std::size_t i = 0; i < std::min(horn.extra_valve.size(), tube.valves.size()); ++i)
        tube.valves[i] += horn.extra_valve[i];
    const auto at = in_kind_order(inputs.kind, positions);
    const int partial = horns::sounding_partial(inputs.kind, fingering, note)->partial;
    const units::Millimetres length = acoustics::sounding_length(tube, fingering.valves, at) +
                                      2.0 * horns::plain_position(inputs.kind, fingering);
    return (1.0 - kappa) * acoustics::lean(length, partial, note, inputs.studio_a4) + horn.player;
}

studio::TuningSheet empty_sheet(studio::Date on) {
    return {.id = {},
            .student = {},
            .horn = {},
            .on = on,
            .mouthpiece = {},
            .room = {},
            .positions = {},
            .readings = {},
            .remarks = {}};
}

studio::TuningSheet sheet_of(const TuningInputs& inputs, const TrueHorn& horn, int takes,
                             const std::vector<std::string>& more) {
    studio::TuningSheet sheet = empty_sheet(inputs.today);
    sheet.id.number = 1;
    sheet.tuner_a4 = inputs.studio_a4;
    sheet.room = inputs.usual_room;
    sheet.positions = inputs.positions;
    std::vector<std::pair<units::Pitch, horns::Fingering>> notes;
    for (const horns::TuningStep& step : inputs.kind.tuning_order)
        notes.emplace_back(step.note, step.fingering);
    for (const std::string& name : more) {
        const units::Pitch pitch = *units::parse_pitch(name);
        notes.emplace_back(pitch, horns::chart_note(inputs.kind, pitch)->usual.fingering);
    }
    const double kappa = figures().of(inputs.level).kappa;
    std::mt19937 random(horn.seed);
    std::normal_distribution<double> noise(0.0, 1.0);
    for (int take = 1; take <= takes; ++take) {
        for (const auto& [note, fingering] : notes) {
            const units::Cents cents = true_reading(inputs, horn, inputs.positions, note, fingering, kappa) +
                                       noise(random) * horn.noise;
            const int partial = horns::sounding_partial(inputs.kind, fingering, note)->partial;
            sheet.readings.push_back({note, fingering, partial, take, cents});
        }
    }
    return sheet;
}

}  // namespace lowledger::tuning
