#pragma once

#include <optional>
#include <wx/window.h>

#include "app/desk/slip.h"

namespace lowledger::window {

/// The slip as a dialog, asked until it makes sense; empty for 'never mind'.
std::optional<desk::SlipAnswers> ask_slip(wxWindow* parent, const desk::Slip& slip);

}  // namespace lowledger::window
