#pragma once

#include <cstdint>
#include <wx/button.h>
#include <wx/panel.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include "app/desk/desk.h"
#include "app/window/listing_view.h"
#include "app/window/menus.h"

namespace lowledger::window {

/// The list of the place that is open: a find field over one row a record, with what matters now.
class ListPane : public wxPanel {
  public:
    ListPane(wxWindow* parent, desk::Desk& desk, Menus& menus);

    /// Only while the place that is open has a list. Reads the rows anew and marks the one whose page is
    /// open.
    void refresh();
    /// The open row if there is one, else the find field.
    void focus();
    void focus_find();
    void focus_list();
    [[nodiscard]] unsigned rows() const { return list_->rows(); }

  private:
    void open_row(std::int64_t record);
    void on_find_key(wxKeyEvent& event);

    desk::Desk& desk_;
    Menus& menus_;
    wxStaticText* find_label_;
    wxTextCtrl* find_;
    ListingView* list_;
    wxButton* add_;
    wxStaticText* none_;
    desk::Place shown_place_ = desk::Place::students;
};

}  // namespace lowledger::window
