#include "model/tuning/notes_for_slides.h"

#include <algorithm>
#include <cmath>

#include "model/tuning/moved_leans.h"

namespace lowledger::tuning {
namespace {

/// Of where the slide belongs, the more the less of the music the note is.
double place_variance(const NoteForSlide& note) {
    return note.spread.value() * note.spread.value() / note.weight;
}

bool within(acoustics::ValveSet some, acoustics::ValveSet all) {
    const auto valves = some.valves();
    return std::ranges::all_of(valves, [&](int valve) { return all.contains(valve); });
}

double weight_of(const SlideSettings& settings, units::Pitch note) {
    const auto at = std::ranges::find(settings.notes, note, &NoteAnswer::note);
    return at == settings.notes.end() ? 0.0 : at->weight;
}

}  // namespace

std::vector<NotesForSlide> notes_for_slides(const TuningInputs& inputs, const Belief& belief,
                                            const SettingsQuestion& question, const SlideSettings& settings) {
    const TuningProfile& profile = belief.profile;
    const MovedLeans moved(question, settings, profile.correction.part);
    std::vector<NotesForSlide> all;
    for (const horns::TuningStep& step : inputs.kind.tuning_order) {
        const std::size_t slide = *inputs.kind.slide_index(step.slide);
        const std::optional<int> valve = inputs.kind.slides[slide].valve;
        if (!valve || question.slides[slide].fixed || step.fingering.valves.valves().size() < 2) continue;
        NotesForSlide found{step.slide, {}};
        for (std::size_t i = 0; i < profile.notes.size(); ++i) {
            const ProfileNote& note = profile.notes[i];
            const double weight = weight_of(settings, note.note);
            if (!note.usual || weight <= 0.0 || !note.fingering.valves.contains(*valve) ||
                !within(note.fingering.valves, step.fingering.valves)) {
                continue;
            }
            const double cents_per_mm =
                (1.0 - profile.correction.part) * std::abs(moved.slope(slide, note.fingering).value());
            if (cents_per_mm <= 0.0) continue;
            found.notes.push_back({note.note, note.fingering, note.partial,
                                   units::Millimetres(std::sqrt(belief.reading_variance[i]) / cents_per_mm),
                                   weight});
        }
        std::ranges::stable_sort(found.notes, {}, place_variance);
        if (found.notes.size() > 1) all.push_back(std::move(found));
    }
    return all;
}

}  // namespace lowledger::tuning
