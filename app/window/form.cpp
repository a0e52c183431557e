#include "app/window/form.h"

#include <algorithm>
#include <utility>
#include <wx/button.h>
#include <wx/listbox.h>

#include "app/window/access.h"
#include "app/window/layout.h"
#include "app/window/text.h"

namespace lowledger::window {
namespace {

constexpr int field_width = 320;

}  // namespace

Form::Form(wxWindow* parent, const wxString& title, const wxString& agree)
    : wxDialog(parent, wxID_ANY, title, wxDefaultPosition, wxDefaultSize,
               wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER),
      fields_(new wxFlexGridSizer(2, wxSize(gap + 4, gap))),
      middle_(new wxBoxSizer(wxHORIZONTAL)),
      problem_(new wxStaticText(this, wxID_ANY, {})) {
    fields_->AddGrowableCol(1);
    auto* all = new wxBoxSizer(wxVERTICAL);
    middle_->Add(fields_, wxSizerFlags(1).Expand().Border(wxALL, margin));
    all->Add(middle_, wxSizerFlags(1).Expand());
    all->Add(problem_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT, margin));
    problem_->SetFont(problem_->GetFont().Bold());
    problem_->Hide();
    auto* buttons = new wxStdDialogButtonSizer;
    auto* ok = new wxButton(this, wxID_OK, agree);
    ok->SetDefault();
    buttons->AddButton(ok);
    buttons->AddButton(new wxButton(this, wxID_CANCEL));
    buttons->Realize();
    all->Add(buttons, wxSizerFlags().Expand().Border(wxALL, margin));
    SetSizer(all);
    Bind(wxEVT_BUTTON, &Form::on_agree, this, wxID_OK);
}

void Form::row(const wxString& label, const std::function<wxWindow*(wxWindow* parent)>& make) {
    // The label first, which names the field after it for a screen reader.
    auto* text = new wxStaticText(this, wxID_ANY, label);
    auto* field = make(this);
    if (dynamic_cast<wxTextCtrl*>(field) != nullptr || dynamic_cast<wxChoice*>(field) != nullptr ||
        dynamic_cast<wxListBox*>(field) != nullptr)
        name_for_readers(field, name_of_label(label));
    else if (dynamic_cast<wxDatePickerCtrl*>(field) != nullptr)
        name_with_parts(field, name_of_label(label));
    const bool tall = field->GetBestSize().GetHeight() > 2 * text->GetBestSize().GetHeight() + gap;
    fields_->Add(text, tall ? wxSizerFlags().Top().Border(wxTOP, gap / 2) : wxSizerFlags().CentreVertical());
    fields_->Add(field, wxSizerFlags(1).Expand());
}

wxTextCtrl* Form::text(const wxString& label, const std::string& value, const wxString& hint) {
    wxTextCtrl* field = nullptr;
    row(label, [&](wxWindow* parent) {
        field = new wxTextCtrl(parent, wxID_ANY, shown(value), wxDefaultPosition, wxSize(field_width, -1));
        if (!hint.empty()) field->SetHint(hint);
        return field;
    });
    return field;
}

wxTextCtrl* Form::lines(const wxString& label, const std::string& value) {
    wxTextCtrl* field = nullptr;
    row(label, [&](wxWindow* parent) {
        field = new wxTextCtrl(parent, wxID_ANY, shown(value), wxDefaultPosition, wxSize(field_width, 70),
                               wxTE_MULTILINE);
        return field;
    });
    return field;
}

wxChoice* Form::choice(const wxString& label, const std::vector<std::string>& items, int selected) {
    wxChoice* field = nullptr;
    row(label, [&](wxWindow* parent) {
        wxArrayString strings;
        for (const auto& item : items)
            strings.Add(shown(item));
        field = new wxChoice(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, strings);
        field->SetSelection(selected);
        return field;
    });
    return field;
}

wxDatePickerCtrl* Form::date(const wxString& label, studio::Date value) {
    wxDatePickerCtrl* field = nullptr;
    row(label, [&](wxWindow* parent) {
        field = new wxDatePickerCtrl(parent, wxID_ANY, wx_date(value), wxDefaultPosition, wxDefaultSize,
                                     wxDP_DEFAULT | wxDP_SHOWCENTURY);
        return field;
    });
    return field;
}

wxCheckBox* Form::check(const wxString& label, bool value) {
    auto* field = new wxCheckBox(this, wxID_ANY, label);
    field->SetValue(value);
    fields_->AddSpacer(0);
    fields_->Add(field, wxSizerFlags(1).Expand());
    return field;
}

void Form::note(const wxString& text) {
    auto* line = new wxStaticText(this, wxID_ANY, text);
    line->Wrap(field_width);
    fields_->AddSpacer(0);
    fields_->Add(line, wxSizerFlags(1).Expand());
}

void Form::beside(wxSizer* left) {
    middle_->Insert(0, left, wxSizerFlags(1).Expand().Border(wxLEFT | wxTOP | wxBOTTOM, margin));
}

void Form::fit() {
    Layout();
    GetSizer()->SetSizeHints(this);
}

bool Form::ask(std::function<std::optional<Problem>()> check) {
    check_ = std::move(check);
    GetSizer()->SetSizeHints(this);
    CentreOnParent();
    return ShowModal() == wxID_OK;
}

void Form::on_agree(wxCommandEvent& event) {
    const auto problem = check_ ? check_() : std::nullopt;
    if (!problem) {
        event.Skip();
        return;
    }
    problem_->SetLabelText(shown(problem->sentence));
    problem_->Wrap(GetClientSize().GetWidth() - 2 * margin);
    problem_->Show();
    GetSizer()->SetSizeHints(this);
    if (problem->field == nullptr) return;
    describe_for_readers(problem->field, problem->sentence);
    problem->field->SetFocus();
    if (auto* text = dynamic_cast<wxTextCtrl*>(problem->field)) text->SelectAll();
}

wxDateTime wx_date(studio::Date date) {
    return {static_cast<wxDateTime::wxDateTime_t>(date.day()),
            static_cast<wxDateTime::Month>(date.month() - 1), date.year()};
}

studio::Date date_of(const wxDatePickerCtrl& field) {
    const wxDateTime value = field.GetValue();
    return {value.GetYear(), static_cast<int>(value.GetMonth()) + 1, value.GetDay()};
}

std::string trimmed(const wxTextCtrl& field) {
    return utf8(wxString(field.GetValue()).Trim(true).Trim(false));
}

}  // namespace lowledger::window
