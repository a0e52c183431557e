#pragma once

#include <optional>
#include <vector>
#include <wx/button.h>
#include <wx/dialog.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include "app/window/listing_view.h"
#include "app/window/tools.h"
#include "model/studio/found.h"

namespace lowledger::window {

/// One field that finds anything in the studio while one types; Enter goes to the row that is chosen.
class FindDialog : public wxDialog {
  public:
    FindDialog(wxWindow* parent, const Tools& tools);

    /// The record to turn to; empty for 'never mind'.
    std::optional<studio::Found> find();

  private:
    void show_found();
    void on_key(wxKeyEvent& event);
    void go_there();

    const Tools& tools_;
    wxTextCtrl* field_;
    ListingView* list_;
    wxStaticText* state_;
    wxButton* go_;
    std::vector<studio::Found> found_;
};

}  // namespace lowledger::window
