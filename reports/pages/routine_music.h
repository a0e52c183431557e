#pragma once

#include <optional>

#include "model/horns/kind.h"
#include "model/studio/practice.h"
#include "reports/engraving/music.h"

namespace lowledger::pages {

/// A routine's music at the pitch of that horn, as the reader's part has it, with the horn's usual fingerings
/// under the notes; empty where the routine has none. It is written as it sounds on a horn in B-flat: a tuba,
/// or an octave above that if the routine names horns and no tuba is among them. Every other horn gets it as
/// much higher or lower as its open tube is, so that fingerings and partials stay. Throws Refusal for music
/// that cannot be read or lies beyond MIDI pitches.
std::optional<engraving::MusicLine> routine_music(const studio::Routine& routine, const horns::HornKind& kind,
                                                  const horns::Reader& reader);

/// As it is written, for nobody's horn.
std::optional<engraving::MusicLine> routine_music(const studio::Routine& routine);

}  // namespace lowledger::pages
