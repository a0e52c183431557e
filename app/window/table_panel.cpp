#include "app/window/table_panel.h"

#include <wx/sizer.h>
#include <wx/wrapsizer.h>

#include "app/desk/action.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"

namespace lowledger::window {

TablePanel::TablePanel(wxWindow* parent, const Tools& tools, desk::Table table)
    : wxPanel(parent), tools_(tools), entry_(desk::entry_of(table)) {
    const auto& words = tools.desk.words();
    summary_ = new wxStaticText(this, wxID_ANY, {});
    empty_ = new wxStaticText(this, wxID_ANY, {});
    list_ = new ListingView(this, tools.menus, words.say(entry_.name));
    list_->offer(entry_.offers);
    list_->on_selected([this](std::int64_t row) {
        tools_.desk.choose(entry_.table, row);
        refresh_buttons();
    });
    list_->on_opened([this](std::int64_t row) {
        tools_.desk.choose(entry_.table, row);
        run(entry_.opens);
    });
    auto* buttons = new wxWrapSizer(wxHORIZONTAL);
    for (const auto offered : entry_.offers) {
        auto* button = new wxButton(this, wxID_ANY, shown(desk::action(offered).text));
        button->Bind(wxEVT_BUTTON, [this, offered](wxCommandEvent&) { run(offered); });
        buttons->Add(button, wxSizerFlags().Border(wxRIGHT | wxTOP, gap));
        buttons_.push_back(button);
    }
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(buttons, wxSizerFlags().Expand().Border(wxLEFT | wxBOTTOM, gap));
    all->Add(summary_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    all->Add(empty_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    all->Add(list_, wxSizerFlags(1).Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    SetSizer(all);
}

void TablePanel::run(std::string_view action) {
    tools_.menus.run(action);
    refresh();
}

void TablePanel::refresh() {
    if (!tools_.desk.has_studio()) return;
    list_->show(entry_.listing(tools_.desk));
    list_->select(entry_.turned_to ? entry_.turned_to(tools_.desk) : tools_.desk.chosen(entry_.table));
    if (!list_->selected()) list_->select_first();
    const bool nothing = list_->rows() == 0;
    empty_->SetLabel(nothing ? shown(tools_.desk.words().say(entry_.empty)) : wxString());
    if (nothing) empty_->Wrap(GetClientSize().GetWidth() - 2 * gap);
    empty_->Show(nothing);
    show_summary();
    list_->Show(!nothing);
    refresh_buttons();
    Layout();
}

void TablePanel::show_summary() {
    const std::string says = entry_.summary ? entry_.summary(tools_.desk) : std::string();
    summary_->SetLabelText(shown(says));
    summary_->Wrap(GetClientSize().GetWidth() - 2 * gap);
    summary_->Show(!says.empty());
}

void TablePanel::refresh_buttons() {
    for (std::size_t i = 0; i < buttons_.size(); ++i) {
        const auto& action = desk::action(entry_.offers[i]);
        const wxString label = shown(desk::menu_text(action, tools_.desk));
        if (buttons_[i]->GetLabel() != label) buttons_[i]->SetLabel(label);
        buttons_[i]->Enable(action.may_run(tools_.desk));
    }
}

void TablePanel::focus_rows() {
    if (list_->IsShown())
        list_->focus_rows();
    else if (!buttons_.empty())
        buttons_.front()->SetFocus();
}

}  // namespace lowledger::window
