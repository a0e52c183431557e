#pragma once

#include <wx/graphics.h>

#include "app/window/inks.h"
#include "reports/canvas/faces.h"
#include "reports/canvas/page.h"

namespace lowledger::window {

/// Pixels (of the toolkit's own, before the screen's scale) for a millimetre.
struct Scale {
    double pixels_per_mm = 96.0 / 25.4;
    [[nodiscard]] int pixels(units::Millimetres length) const;
    [[nodiscard]] units::Millimetres millimetres(int pixels) const;
};

/// Replays a recorded page, its top left corner at the origin of `context`. Text is drawn as the outlines
/// that the PDF embeds, so that the screen shows the page that is printed.
void paint(wxGraphicsContext& context, const canvas::Page& page, const canvas::Faces& faces, const Inks& inks,
           Scale scale);

}  // namespace lowledger::window
