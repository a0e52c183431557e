#pragma once

#include <string_view>
#include <wx/frame.h>
#include <wx/listbox.h>
#include <wx/textctrl.h>

#include "app/desk/manual.h"

namespace lowledger::window {

/// The manual beside the work: its parts at the left, the text of one at the right.
class ManualWindow : public wxFrame {
  public:
    explicit ManualWindow(wxWindow* parent);

    /// Shows the part of that title; the first where there is none of it.
    void turn_to(std::string_view title);

  private:
    void show_part(const desk::ManualPart& part);

    wxListBox* titles_;
    wxTextCtrl* text_;
};

}  // namespace lowledger::window
