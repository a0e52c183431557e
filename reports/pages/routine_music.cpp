#include "reports/pages/routine_music.h"

#include <algorithm>

#include "model/horns/chart.h"
#include "reports/engraving/music_text.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

/// First partial of the open B-flat tuba, and of euphonium and trombone.
const units::Pitch tuba_in_b_flat{22};
const units::Pitch trombone_in_b_flat{34};

bool is_low(const std::string& horn) {
    return horn.find("uba") != std::string::npos || horn.find("ousaphone") != std::string::npos;
}

units::Pitch written_for(const studio::Routine& routine) {
    const bool high = !routine.horns.empty() && std::ranges::none_of(routine.horns, is_low);
    return high ? trombone_in_b_flat : tuba_in_b_flat;
}

}  // namespace

std::optional<engraving::MusicLine> routine_music(const studio::Routine& routine) {
    if (routine.music.empty()) return std::nullopt;
    return engraving::parse_music(routine.music);
}

std::optional<engraving::MusicLine> routine_music(const studio::Routine& routine, const horns::HornKind& kind,
                                                  const horns::Reader& reader) {
    const auto written = routine_music(routine);
    if (!written) return std::nullopt;
    const auto figure = [&](units::Pitch note) -> std::string {
        const auto way = horns::chart_note(kind, note);
        return way ? words::fingering_figure(kind, way->usual.fingering) : std::string();
    };
    const auto none = [](units::Pitch) { return std::optional<units::Cents>(); };
    const auto sounding = engraving::transposed(*written, kind.fundamental - written_for(routine));
    return engraving::for_reader(engraving::with_figures(sounding, figure, none), reader);
}

}  // namespace lowledger::pages
