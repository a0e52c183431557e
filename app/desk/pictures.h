#pragma once

#include <string>

#include "app/desk/live.h"
#include "model/horns/note_style.h"
#include "model/studio/records.h"
#include "reports/canvas/page.h"
#include "reports/engraving/engraver.h"
#include "reports/words/words.h"

namespace lowledger::desk {

/// A drawing for the screen and what it shows, in words.
struct Picture {
    canvas::Page page;
    std::string content;
};

/// What drawings are made with.
struct PictureTools {
    const engraving::Engraver& engraver;
    const words::Words& words;
    horns::NoteStyle style = {};
};

/// The slide rules in working order, each with its sentence. Only with an answer.
Picture slide_rules(const PictureTools& tools, const LiveAnswer& live, units::Millimetres width);

enum class ChartNotes {
    /// Those with readings.
    measured,
    /// All that the settings weigh.
    weighed,
};

/// The lean chart, before and after the settings. Only with an answer.
Picture lean_picture(const PictureTools& tools, const LiveAnswer& live, ChartNotes notes,
                     units::Millimetres width);

/// One note as the player's part has it, on its staff with its fingering.
Picture note_on_staff(const PictureTools& tools, const horns::HornKind& kind, units::Pitch note,
                      const horns::Fingering& fingering, units::Millimetres width);

}  // namespace lowledger::desk
