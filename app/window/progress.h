#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <vector>
#include <wx/window.h>

namespace lowledger::window {

/// Does a piece of work for each name in turn under a busy cursor; after half a second a dialog shows whose
/// it is and how far, and stops it. False if it was stopped. What a piece throws goes on.
bool work_through(wxWindow* parent, const std::vector<std::string>& names,
                  const std::function<void(std::size_t)>& piece);

}  // namespace lowledger::window
