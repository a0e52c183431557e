#include "app/window/sheets_panel.h"

#include <wx/settings.h>
#include <wx/sizer.h>

#include "app/desk/sheet_history.h"
#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"

namespace lowledger::window {

using words::Sentence;

SheetsPanel::SheetsPanel(wxWindow* parent, const Tools& tools) : wxPanel(parent), tools_(tools) {
    const auto& words = tools.desk.words();
    empty_ = new EmptyPage(this, tools.menus);
    full_ = new wxPanel(this);
    list_ = new ListingView(full_, tools.menus, words.say(Sentence::sheets_heading));
    list_->SetName("sheets over time");
    pictured_ = new wxScrolledWindow(full_, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL);
    pictured_->SetScrollRate(0, 12);
    with_steady_bars(pictured_);
    pictured_->SetBackgroundColour(wxSystemSettings::GetColour(wxSYS_COLOUR_LISTBOX));
    name_for_readers(pictured_, words.say(Sentence::sheets_heading));
    title_ = heading(pictured_, {});
    picture_ = new Drawing(pictured_, tools.faces);
    auto* drawn = new wxBoxSizer(wxVERTICAL);
    drawn->Add(title_, wxSizerFlags().Expand().Border(wxALL, gap));
    drawn->Add(picture_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    pictured_->SetSizer(drawn);
    auto* columns = new wxBoxSizer(wxVERTICAL);
    columns->Add(list_, wxSizerFlags(2).Expand());
    columns->Add(pictured_, wxSizerFlags(3).Expand().Border(wxTOP, 1));
    full_->SetSizer(columns);
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(empty_, wxSizerFlags(1).Expand());
    all->Add(full_, wxSizerFlags(1).Expand());
    SetSizer(all);
    list_->on_changed([this] { draw(); });
    list_->on_opened([this](std::int64_t sheet) {
        told(this, [&] { desk::open_sheet(tools_.desk, studio::TuningSheetId{sheet}); });
    });
}

void SheetsPanel::refresh() {
    const auto& desk = tools_.desk;
    auto listing = desk::sheets_listing(desk);
    const bool none = listing.rows.empty();
    empty_->Show(none);
    full_->Show(!none);
    list_->show(std::move(listing));
    if (none)
        empty_->show(desk.words().say(Sentence::sheets_empty), {{"go.sheet", _("Go to the &tuning sheet")}});
    else
        draw();
    Layout();
}

void SheetsPanel::draw() {
    const auto chosen = list_->all_selected();
    const auto& words = tools_.desk.words();
    const auto title = words.say(chosen.size() == 2 ? Sentence::sheets_two : Sentence::sheets_over_time);
    const auto pictures = tools_.pictures();
    const auto probe = desk::sheets_picture(pictures, tools_.desk, chosen, units::Millimetres(300.0));
    title_->SetLabelText(shown(title));
    picture_->show(
        [&desk = tools_.desk, pictures, chosen](units::Millimetres width) {
            return desk::sheets_picture(pictures, desk, chosen, width).page;
        },
        title, probe.content);
    pictured_->Layout();
    pictured_->FitInside();
}

void SheetsPanel::focus_rows() {
    if (!full_->IsShown()) {
        empty_->SetFocus();
        return;
    }
    if (!list_->selected()) list_->select_first();
    list_->focus_rows();
}

}  // namespace lowledger::window
