#include "app/window/inks.h"

#include <wx/settings.h>

namespace lowledger::window {

const wxColour& Inks::of(canvas::Tone tone) const {
    switch (tone) {
        case canvas::Tone::ink:
            return ink;
        case canvas::Tone::faint:
            return faint;
        case canvas::Tone::pale:
            return pale;
        case canvas::Tone::accent:
            return accent;
        case canvas::Tone::paper:
            return paper;
    }
    return ink;
}

Inks screen_inks() {
    const wxColour ground = wxSystemSettings::GetColour(wxSYS_COLOUR_LISTBOX);
    if (ground.GetLuminance() < 0.5)
        return {wxColour("#D8DEE4"), wxColour("#A9B4BE"), wxColour("#3A4046"), wxColour("#D6AE55"), ground};
    return {wxColour("#22303C"), wxColour("#566573"), wxColour("#ECEAE2"), wxColour("#7A5C12"), ground};
}

Inks paper_inks() {
    return {wxColour("#000000"), wxColour("#555555"), wxColour("#E6E6E6"), wxColour("#000000"),
            wxColour("#FFFFFF")};
}

}  // namespace lowledger::window
