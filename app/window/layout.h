#pragma once

#include <string>
#include <wx/stattext.h>

namespace lowledger::window {

/// Between neighbouring controls, in the toolkit's pixels.
inline constexpr int gap = 8;
/// Around the fields of a dialog.
inline constexpr int margin = 16;

/// A bold line over what it names.
wxStaticText* heading(wxWindow* parent, const std::string& text);

/// A number for a field: a place after the point only where it is needed.
std::string short_decimal(double value);

}  // namespace lowledger::window
