#pragma once

#include <cstdint>
#include <vector>
#include <wx/panel.h>
#include <wx/scrolwin.h>
#include <wx/stattext.h>

#include "app/window/drawing.h"
#include "app/window/empty_page.h"
#include "app/window/listing_view.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// All sheets of the student on the horn in a list, and a picture of them: over time, or of two that are
/// selected beside each other.
class SheetsPanel : public wxPanel {
  public:
    SheetsPanel(wxWindow* parent, const Tools& tools);

    void refresh();
    void focus_rows();

  private:
    void draw();

    const Tools& tools_;
    EmptyPage* empty_ = nullptr;
    wxPanel* full_ = nullptr;
    ListingView* list_ = nullptr;
    wxScrolledWindow* pictured_ = nullptr;
    wxStaticText* title_ = nullptr;
    Drawing* picture_ = nullptr;
};

}  // namespace lowledger::window
