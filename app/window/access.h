#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <wx/window.h>

namespace lowledger::window {

/// What a screen reader says of a control that the toolkit leaves nameless.
void name_for_readers(wxWindow* control, const std::string& name, const std::string& description = {});

/// The same for a control that the toolkit builds of several, such as a date with its button.
void name_with_parts(wxWindow* control, const std::string& name);

/// A label's text without mnemonic and colon, as a name.
std::string name_of_label(const wxString& label);

/// What is to be said of a control besides its name: what is wrong with what was typed.
void describe_for_readers(wxWindow* control, const std::string& description);

/// Takes the toolkit's own search box from a list, which would catch Ctrl+F and every letter.
void without_own_search(wxWindow* list);

/// Keeps the bars of a part that scrolls in sight, so that one sees that there is more.
void with_steady_bars(wxWindow* scrolled);

/// Shows `text_of` a list's row while the pointer rests on it, or by the toolkit's key for it.
void explain_rows(wxWindow* list, std::function<std::string(std::size_t row)> text_of);

/// Names a drawing, which is then read as a picture with `description` as its content.
void name_drawing(wxWindow* panel, const std::string& name, const std::string& description);

}  // namespace lowledger::window
