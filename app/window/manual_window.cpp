#include "app/window/manual_window.h"

#include <algorithm>
#include <wx/panel.h>
#include <wx/sizer.h>

#include "app/window/access.h"
#include "app/window/layout.h"
#include "app/window/text.h"

namespace lowledger::window {
namespace {

constexpr int titles_width = 230;
constexpr float title_scale = 1.5F;
// Tenths of a line.
constexpr int line_spacing = 12;

using Look = desk::ManualRun::Look;

wxFont font_of(Look look, const wxFont& plain) {
    switch (look) {
        case Look::strong:
        case Look::heading:
            return plain.Bold();
        case Look::code: {
            wxFont mono(plain);
            mono.SetFamily(wxFONTFAMILY_TELETYPE);
            return mono;
        }
        case Look::text:
            break;
    }
    return plain;
}

}  // namespace

ManualWindow::ManualWindow(wxWindow* parent)
    : wxFrame(parent, wxID_ANY, _("Manual"), wxDefaultPosition, wxSize(820, 620),
              wxDEFAULT_FRAME_STYLE | wxFRAME_FLOAT_ON_PARENT) {
    SetName("manual");
    auto* body = new wxPanel(this);
    titles_ = new wxListBox(body, wxID_ANY, wxDefaultPosition, wxSize(titles_width, -1), {},
                            wxLB_SINGLE | wxBORDER_NONE);
    name_for_readers(titles_, utf8(_("Parts of the manual")));
    for (const auto& part : desk::manual())
        titles_->Append(shown(part.title));
    text_ = new wxTextCtrl(body, wxID_ANY, {}, wxDefaultPosition, wxDefaultSize,
                           wxTE_MULTILINE | wxTE_READONLY | wxTE_RICH2 | wxTE_BESTWRAP | wxBORDER_NONE);
    text_->SetName("manual text");
    body->SetBackgroundColour(text_->GetBackgroundColour());
    auto* across = new wxBoxSizer(wxHORIZONTAL);
    across->Add(titles_, wxSizerFlags().Expand());
    across->Add(text_, wxSizerFlags(1).Expand().Border(wxALL, 2 * gap));
    body->SetSizer(across);
    CentreOnParent();
    titles_->Bind(wxEVT_LISTBOX, [this](wxCommandEvent& event) {
        show_part(desk::manual().at(static_cast<std::size_t>(event.GetSelection())));
    });
    Bind(wxEVT_CHAR_HOOK, [this](wxKeyEvent& event) {
        if (event.GetKeyCode() == WXK_ESCAPE)
            Close();
        else
            event.Skip();
    });
}

void ManualWindow::turn_to(std::string_view title) {
    const auto& parts = desk::manual();
    const auto found = std::ranges::find(parts, title, &desk::ManualPart::title);
    const auto at = found == parts.end() ? 0 : found - parts.begin();
    titles_->SetSelection(static_cast<int>(at));
    show_part(parts.at(static_cast<std::size_t>(at)));
    text_->SetFocus();
}

void ManualWindow::show_part(const desk::ManualPart& part) {
    const wxFont plain = GetFont();
    text_->Clear();
    wxTextAttr look;
    look.SetLineSpacing(line_spacing);
    look.SetFont(plain.Scaled(title_scale).Bold());
    text_->SetDefaultStyle(look);
    text_->AppendText(shown(part.title) + "\n\n");
    for (const auto& run : part.runs) {
        look.SetFont(font_of(run.look, plain));
        text_->SetDefaultStyle(look);
        text_->AppendText(shown(run.text));
    }
    text_->SetInsertionPoint(0);
    text_->ShowPosition(0);
    name_for_readers(text_, part.title);
}

}  // namespace lowledger::window
