#include "app/window/paragraph.h"

#include <wx/sizer.h>

#include "app/window/text.h"

namespace lowledger::window {

Paragraph::Paragraph(wxWindow* parent)
    : wxStaticText(parent, wxID_ANY, {}, wxDefaultPosition, wxDefaultSize, wxST_NO_AUTORESIZE) {
    Bind(wxEVT_SIZE, &Paragraph::on_size, this);
}

void Paragraph::say(const std::string& text) {
    const wxString wanted = shown(text);
    Show(!wanted.empty());
    if (wanted == text_) return;
    text_ = wanted;
    wrapped_to_ = -1;
    wrap();
}

void Paragraph::wrap() {
    const int width = GetSize().GetWidth();
    if (width < 40 || width == wrapped_to_) return;
    wrapped_to_ = width;
    SetLabelText(text_);
    Wrap(width);
    InvalidateBestSize();
    const int height = GetBestSize().GetHeight();
    if (GetMinSize().GetHeight() == height) return;
    SetMinSize(wxSize(40, height));
    GetParent()->CallAfter([parent = GetParent()] {
        parent->Layout();
        parent->FitInside();
    });
}

void Paragraph::on_size(wxSizeEvent& event) {
    wrap();
    event.Skip();
}

}  // namespace lowledger::window
