#include "model/horns/section_notes.h"

#include <cstdlib>

namespace lowledger::horns {
namespace {

std::optional<units::Pitch> in_octave_of(const HornKind& kind, units::Pitch note) {
    constexpr int highest = 127;
    const int band = kind.band_note.midi();
    std::optional<units::Pitch> nearest;
    for (int midi = note.midi() % 12; midi <= highest; midi += 12) {
        const units::Pitch each(midi);
        if (!kind.usual_range.contains(each)) continue;
        if (!nearest || std::abs(midi - band) < std::abs(nearest->midi() - band)) nearest = each;
    }
    return nearest;
}

}  // namespace

std::vector<std::optional<ChartNote>> section_notes(const HornKind& kind,
                                                    std::span<const units::Pitch> notes) {
    std::vector<std::optional<ChartNote>> own;
    own.reserve(notes.size());
    for (const units::Pitch note : notes) {
        const auto here = in_octave_of(kind, note);
        own.push_back(here ? chart_note(kind, *here) : std::nullopt);
    }
    return own;
}

}  // namespace lowledger::horns
