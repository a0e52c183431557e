#pragma once

#include <functional>
#include <string>
#include <vector>
#include <wx/button.h>
#include <wx/panel.h>
#include <wx/stattext.h>

#include "app/window/menus.h"

namespace lowledger::window {

/// What stands where there is nothing yet: a line that says what the place is for, and the action that starts
/// it.
class EmptyPage : public wxPanel {
  public:
    EmptyPage(wxWindow* parent, Menus& menus);

    struct Offer {
        std::string_view action;
        wxString label;
    };
    /// The first offer has the default button's place.
    void show(const std::string& sentence, const std::vector<Offer>& offers);

  private:
    Menus& menus_;
    wxStaticText* line_;
    wxSizer* buttons_;
    std::string sentence_;
};

}  // namespace lowledger::window
