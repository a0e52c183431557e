#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>
#include <wx/checkbox.h>
#include <wx/choice.h>
#include <wx/datectrl.h>
#include <wx/dialog.h>
#include <wx/sizer.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include "model/studio/date.h"

namespace lowledger::window {

/// A dialog of labelled fields, one under the other. It closes with OK only when nothing is wrong; what is
/// wrong is said in the dialog, and the field in question has the focus.
class Form : public wxDialog {
  public:
    Form(wxWindow* parent, const wxString& title, const wxString& agree);

    /// Labels carry the mnemonic: "&Name:". `hint` says what may stand in the field.
    wxTextCtrl* text(const wxString& label, const std::string& value, const wxString& hint = {});
    wxTextCtrl* lines(const wxString& label, const std::string& value);
    wxChoice* choice(const wxString& label, const std::vector<std::string>& items, int selected);
    wxDatePickerCtrl* date(const wxString& label, studio::Date value);
    wxCheckBox* check(const wxString& label, bool value);
    /// A whole line between the fields.
    void note(const wxString& text);
    /// Any control made with `body()` as its parent, just after its label.
    void row(const wxString& label, const std::function<wxWindow*(wxWindow* parent)>& make);
    [[nodiscard]] wxWindow* body() { return this; }
    /// Something that stands at the left of all fields.
    void beside(wxSizer* left);
    /// As large as what is in it asks for, where that changed.
    void fit();
    [[nodiscard]] wxFlexGridSizer* fields() { return fields_; }

    struct Problem {
        wxWindow* field = nullptr;
        std::string sentence;
    };
    /// Shows the dialog until `check` finds no problem; false for 'never mind'.
    bool ask(std::function<std::optional<Problem>()> check);

  private:
    void on_agree(wxCommandEvent& event);

    wxFlexGridSizer* fields_;
    wxBoxSizer* middle_;
    wxStaticText* problem_;
    std::function<std::optional<Problem>()> check_;
};

wxDateTime wx_date(studio::Date date);
studio::Date date_of(const wxDatePickerCtrl& field);
std::string trimmed(const wxTextCtrl& field);

}  // namespace lowledger::window
