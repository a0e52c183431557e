#include "reports/pages/chart_notes.h"

#include <algorithm>
#include <set>

#include "model/horns/hand_slide.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using tuning::NoteAnswer;
using tuning::RemainingNote;
using units::Pitch;

template <typename Notes>
auto of_pitch(const Notes& notes, Pitch note) {
    const auto found =
        std::find_if(notes.begin(), notes.end(), [&](const auto& n) { return n.note == note; });
    return found == notes.end() ? nullptr : &*found;
}

std::set<Pitch> pitches_shown(const tuning::TuningAnswer& answer, std::size_t most) {
    std::set<Pitch> shown;
    const auto show = [&](Pitch note) {
        if (shown.size() < most) shown.insert(note);
    };
    for (const auto& step : answer.card.steps)
        show(step.note);
    if (answer.card.band_note) show(answer.card.band_note->note);
    for (const auto& note : answer.remains.notes)
        show(note.note);
    return shown;
}

/// How the note is played once the slides are set.
const horns::Fingering& fingering_after(const tuning::ProfileNote& usual, const NoteAnswer* settled,
                                        const RemainingNote* remaining) {
    if (remaining != nullptr) return remaining->fingering;
    return settled != nullptr ? settled->way.fingering : usual.fingering;
}

/// What playing a trombone's first position a little out does to a lean that was read with the slide in.
units::Cents change_by_home(const HandoutInputs& inputs, const horns::Fingering& fingering) {
    return (1.0 - inputs.answer.profile.correction.part) *
           horns::change_by_hand_slide(inputs.kind, fingering, inputs.answer.card.hand_slide_home);
}

std::optional<units::Cents> lean_after(const HandoutInputs& inputs, const NoteAnswer* settled,
                                       const RemainingNote* remaining) {
    if (remaining != nullptr) return remaining->lean;
    if (settled == nullptr) return std::nullopt;
    const auto* const way = inputs.answer.profile.way(settled->note, settled->way.fingering);
    if (way == nullptr) return std::nullopt;
    return way->mean + change_by_home(inputs, way->fingering) + (settled->lean_after - settled->way.mean);
}

}  // namespace

std::vector<charts::LeanNote> chart_notes(const HandoutInputs& inputs, std::size_t most) {
    const auto& answer = inputs.answer;
    const horns::NoteStyle style = note_style(inputs);
    std::vector<charts::LeanNote> notes;
    for (const Pitch pitch : pitches_shown(answer, most)) {
        const auto* const usual = answer.profile.usual(pitch);
        if (usual == nullptr) continue;
        const auto* const settled = of_pitch(answer.settings.notes, pitch);
        const auto* const remaining = of_pitch(answer.remains.notes, pitch);
        const auto& fingering = fingering_after(*usual, settled, remaining);
        const auto* const way = answer.profile.way(pitch, fingering);
        charts::LeanNote note;
        note.spelling = horns::spelt(pitch, style);
        note.fingering = words::fingering_figure(inputs.kind, fingering);
        note.before = usual->mean + change_by_home(inputs, usual->fingering);
        if (answer.enough.tuning_notes_in()) note.after = lean_after(inputs, settled, remaining);
        note.spread = way != nullptr ? way->spread : usual->spread;
        note.alternate = fingering != usual->fingering;
        note.measured = usual->takes > 0 || (way != nullptr && way->takes > 0);
        notes.push_back(note);
    }
    return notes;
}

}  // namespace lowledger::pages
