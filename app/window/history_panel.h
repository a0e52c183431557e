#pragma once

#include <vector>
#include <wx/notebook.h>
#include <wx/panel.h>

#include "app/desk/student_history.h"
#include "app/window/empty_page.h"
#include "app/window/listing_view.h"
#include "app/window/sheets_panel.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// The section 'History' of a student's page: all that was, newest first, and the tuning
/// sheets over time.
class HistoryPanel : public wxPanel {
  public:
    HistoryPanel(wxWindow* parent, const Tools& tools);

    void refresh();
    void focus_rows();

  private:
    const Tools& tools_;
    std::vector<desk::HistoryItem> items_;
    wxNotebook* views_;
    ListingView* list_;
    EmptyPage* empty_;
    SheetsPanel* sheets_;
};

}  // namespace lowledger::window
