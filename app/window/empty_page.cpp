#include "app/window/empty_page.h"

#include <wx/sizer.h>

#include "app/window/text.h"

namespace lowledger::window {
namespace {

constexpr int line_width = 420;

}  // namespace

EmptyPage::EmptyPage(wxWindow* parent, Menus& menus) : wxPanel(parent), menus_(menus) {
    line_ = new wxStaticText(this, wxID_ANY, {}, wxDefaultPosition, wxDefaultSize, wxALIGN_CENTRE_HORIZONTAL);
    buttons_ = new wxBoxSizer(wxHORIZONTAL);
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->AddStretchSpacer(2);
    all->Add(line_, wxSizerFlags().CentreHorizontal());
    all->Add(buttons_, wxSizerFlags().CentreHorizontal().Border(wxTOP, 16));
    all->AddStretchSpacer(3);
    SetSizer(all);
}

void EmptyPage::show(const std::string& sentence, const std::vector<Offer>& offers) {
    if (sentence == sentence_) return;
    sentence_ = sentence;
    line_->SetLabelText(shown(sentence));
    line_->Wrap(line_width);
    buttons_->Clear(true);
    for (const auto& offer : offers) {
        auto* button = new wxButton(this, wxID_ANY, offer.label);
        button->Bind(wxEVT_BUTTON, [this, action = offer.action](wxCommandEvent&) { menus_.run(action); });
        buttons_->Add(button, wxSizerFlags().Border(wxLEFT | wxRIGHT, 6));
    }
    Layout();
}

}  // namespace lowledger::window
