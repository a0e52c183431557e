#include "app/window/find_dialog.h"

#include <algorithm>
#include <wx/display.h>
#include <wx/sizer.h>

#include "app/desk/finding.h"
#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"

namespace lowledger::window {
namespace {

using words::Sentence;

constexpr int usual_width = 960;
constexpr int usual_height = 560;

}  // namespace

FindDialog::FindDialog(wxWindow* parent, const Tools& tools)
    : wxDialog(parent, wxID_ANY, shown(tools.desk.words().say(Sentence::find_title)), wxDefaultPosition,
               wxDefaultSize, wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER),
      tools_(tools) {
    SetName("find anything");
    const auto& words = tools.desk.words();
    auto* label = new wxStaticText(this, wxID_ANY, shown(words.say(Sentence::find_label)));
    field_ = new wxTextCtrl(this, wxID_ANY);
    field_->SetName("find words");
    name_for_readers(field_, name_of_label(label->GetLabel()));
    list_ = new ListingView(this, tools.menus, words.say(Sentence::find_results));
    list_->SetName("found");
    state_ = new wxStaticText(this, wxID_ANY, {});
    go_ = new wxButton(this, wxID_OK, shown(words.say(Sentence::find_go)));
    go_->SetDefault();
    auto* close = new wxButton(this, wxID_CANCEL, _("&Close"));

    auto* line = new wxBoxSizer(wxHORIZONTAL);
    line->Add(label, wxSizerFlags().CentreVertical().Border(wxRIGHT, gap));
    line->Add(field_, wxSizerFlags(1).CentreVertical());
    auto* buttons = new wxBoxSizer(wxHORIZONTAL);
    buttons->Add(state_, wxSizerFlags(1).CentreVertical());
    buttons->Add(close, wxSizerFlags().Border(wxRIGHT, gap));
    buttons->Add(go_);
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(line, wxSizerFlags().Expand().Border(wxALL, margin));
    all->Add(list_, wxSizerFlags(1).Expand().Border(wxLEFT | wxRIGHT, margin));
    all->Add(buttons, wxSizerFlags().Expand().Border(wxALL, margin));
    SetSizer(all);
    const wxRect screen = wxDisplay(wxDisplay::GetFromWindow(parent)).GetClientArea();
    SetSize(std::min(usual_width, screen.GetWidth() * 9 / 10),
            std::min(usual_height, screen.GetHeight() * 9 / 10));
    CentreOnParent();

    field_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { told(this, [this] { show_found(); }); });
    field_->Bind(wxEVT_KEY_DOWN, &FindDialog::on_key, this);
    list_->on_selected([this](std::int64_t) { go_->Enable(); });
    list_->on_opened([this](std::int64_t) { go_there(); });
    go_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { go_there(); });
    show_found();
}

void FindDialog::show_found() {
    const auto& words = tools_.desk.words();
    const std::string typed = utf8(field_->GetValue());
    found_ = desk::find_anything(tools_.desk, typed);
    list_->show(desk::found_listing(tools_.desk, found_));
    list_->select(std::nullopt);
    list_->select_first();
    go_->Enable(!found_.empty());
    std::string state;
    if (typed.find_first_not_of(' ') == std::string::npos)
        state = words.say(Sentence::find_how);
    else if (found_.empty())
        state = words.say(Sentence::find_nothing);
    else if (static_cast<int>(found_.size()) >= desk::most_found)
        state = words.say(Sentence::find_newest, {{"count", std::to_string(desk::most_found)}});
    else
        state = words.say_counted(Sentence::find_count_one, Sentence::find_count_many,
                                  static_cast<int>(found_.size()));
    state_->SetLabelText(shown(state));
}

void FindDialog::on_key(wxKeyEvent& event) {
    if (event.GetKeyCode() == WXK_DOWN && list_->rows() > 0)
        list_->focus_rows();
    else
        event.Skip();
}

void FindDialog::go_there() {
    if (list_->selected()) EndModal(wxID_OK);
}

std::optional<studio::Found> FindDialog::find() {
    field_->SetFocus();
    if (ShowModal() != wxID_OK) return std::nullopt;
    return found_.at(static_cast<std::size_t>(list_->selected().value()));
}

}  // namespace lowledger::window
