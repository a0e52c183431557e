#pragma once

#include <functional>
#include <string>
#include <vector>
#include <wx/button.h>
#include <wx/dataview.h>
#include <wx/panel.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include "app/desk/desk.h"
#include "app/desk/lists.h"
#include "app/window/menus.h"

namespace lowledger::window {

/// The list of the place: a find field over one row a student or horn, with what matters now.
class ListPane : public wxPanel {
  public:
    ListPane(wxWindow* parent, desk::Desk& desk, Menus& menus);

    /// Reads the rows anew and marks the one whose page is open.
    void refresh();
    /// The open row if there is one, else the find field.
    void focus();
    void focus_find();
    void focus_list();
    [[nodiscard]] unsigned rows() const { return static_cast<unsigned>(rows_.size()); }

  private:
    struct Row {
        std::int64_t id = 0;
        wxString title;
        wxString beside;
        wxString now;
    };
    class Model;

    void read_rows();
    void share_width();
    void select_open_row();
    void open_row(unsigned row);
    void on_selected(wxDataViewEvent& event);
    void on_context(wxDataViewEvent& event);
    void on_find_key(wxKeyEvent& event);

    desk::Desk& desk_;
    Menus& menus_;
    wxStaticText* find_label_;
    wxTextCtrl* find_;
    wxDataViewCtrl* list_;
    wxButton* add_;
    wxStaticText* none_;
    wxObjectDataPtr<Model> model_;
    std::vector<Row> rows_;
    desk::Place shown_place_ = desk::Place::students;
    bool selecting_ = false;
};

}  // namespace lowledger::window
