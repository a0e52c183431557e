#pragma once

#include <vector>
#include <wx/button.h>
#include <wx/panel.h>
#include <wx/stattext.h>

#include "app/desk/tables.h"
#include "app/window/listing_view.h"
#include "app/window/tools.h"

namespace lowledger::window {

/// One of the desk's tables with the actions that it offers as buttons.
class TablePanel : public wxPanel {
  public:
    TablePanel(wxWindow* parent, const Tools& tools, desk::Table table);

    /// Shows what the table holds now, and what may be done with it.
    void refresh();
    void focus_rows();

  private:
    void run(std::string_view action);
    void show_summary();
    void refresh_buttons();

    const Tools& tools_;
    const desk::TableEntry& entry_;
    wxStaticText* summary_;
    wxStaticText* empty_;
    ListingView* list_;
    std::vector<wxButton*> buttons_;
};

}  // namespace lowledger::window
