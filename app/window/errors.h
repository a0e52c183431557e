#pragma once

#include <functional>
#include <wx/window.h>

namespace lowledger::window {

/// The one way from an exception to a person: runs `work` and shows what it throws as a sentence. False if it
/// threw.
bool told(wxWindow* parent, const std::function<void()>& work);

}  // namespace lowledger::window
