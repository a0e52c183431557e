#pragma once

#include "app/desk/desk.h"
#include "app/desk/note_names.h"
#include "app/desk/pictures.h"
#include "app/window/drawing.h"
#include "app/window/menus.h"
#include "reports/canvas/faces.h"
#include "reports/engraving/engraver.h"

namespace lowledger::window {

/// What every part of the window works with.
struct Tools {
    desk::Desk& desk;
    Menus& menus;
    const canvas::Faces& faces;
    /// For charts, and for the one large staff beside the tuning sheet.
    const engraving::Engraver& engraver;
    const engraving::Engraver& large_engraver;

    /// The tools of `app/desk`'s drawings, notes as who is on the page reads them.
    [[nodiscard]] desk::PictureTools pictures(bool large = false) const {
        return {large ? large_engraver : engraver, desk.words(),
                desk.has_studio() ? desk::note_style(desk) : horns::NoteStyle{}};
    }
};

}  // namespace lowledger::window
