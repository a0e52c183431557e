#pragma once

#include <wx/colour.h>

#include "reports/canvas/page.h"

namespace lowledger::window {

/// The screen's colours for the tones of a recorded page.
struct Inks {
    wxColour ink;
    wxColour faint;
    wxColour pale;
    wxColour accent;
    wxColour paper;
    [[nodiscard]] const wxColour& of(canvas::Tone tone) const;
};

/// For drawings on the window, in the system's light or dark dress; the ground is the system's.
Inks screen_inks();
/// As a printer would: black and greys on white.
Inks paper_inks();

}  // namespace lowledger::window
