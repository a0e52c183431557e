#pragma once

#include <string>
#include <wx/window.h>

namespace lowledger::window {

/// What a screen reader says of a control that the toolkit leaves nameless.
void name_for_readers(wxWindow* control, const std::string& name, const std::string& description = {});

/// Takes the toolkit's own search box from a list, which would catch Ctrl+F and every letter.
void without_own_search(wxWindow* list);

/// Names a drawing, which is then read as a picture with `description` as its content.
void name_drawing(wxWindow* panel, const std::string& name, const std::string& description);

}  // namespace lowledger::window
