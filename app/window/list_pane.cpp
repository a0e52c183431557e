#include "app/window/list_pane.h"

#include <wx/sizer.h>

#include "app/desk/places.h"
#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"

namespace lowledger::window {
namespace {

using words::Sentence;

const desk::PlaceList& list_of(const desk::Desk& desk) {
    return *desk::entry_of(desk.view().place).list;
}

}  // namespace

ListPane::ListPane(wxWindow* parent, desk::Desk& desk, Menus& menus)
    : wxPanel(parent), desk_(desk), menus_(menus) {
    find_label_ = new wxStaticText(this, wxID_ANY, _("F&ind:"));
    find_ = new wxTextCtrl(this, wxID_ANY);
    name_for_readers(find_, utf8(_("Find")));
    list_ = new ListingView(this, menus, {});
    list_->SetName("list");
    none_ = new wxStaticText(this, wxID_ANY, {});
    add_ = new wxButton(this, wxID_ANY, {});

    auto* find_row = new wxBoxSizer(wxHORIZONTAL);
    find_row->Add(find_label_, wxSizerFlags().CentreVertical().Border(wxRIGHT, 6));
    find_row->Add(find_, wxSizerFlags(1).CentreVertical());
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(find_row, wxSizerFlags().Expand().Border(wxALL, gap));
    all->Add(none_, wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    all->Add(list_, wxSizerFlags(1).Expand());
    all->Add(add_, wxSizerFlags().Expand().Border(wxALL, gap));
    SetSizer(all);

    find_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { refresh(); });
    find_->Bind(wxEVT_KEY_DOWN, &ListPane::on_find_key, this);
    list_->on_selected([this](std::int64_t record) { open_row(record); });
    add_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { menus_.run(list_of(desk_).add); });
}

void ListPane::refresh() {
    if (shown_place_ != desk_.view().place) {
        shown_place_ = desk_.view().place;
        find_->ChangeValue({});
    }
    const auto& list = list_of(desk_);
    name_for_readers(list_, desk::title_of(shown_place_));
    list_->offer(list.offers);
    add_->SetLabel(shown(desk::menu_text(desk::action(list.add), desk_)));
    add_->Enable(desk_.may_write());
    list_->show(desk_.has_studio() ? list.listing(desk_, utf8(find_->GetValue())) : desk::Listing());
    list_->select(list.open(desk_.view()));
    const bool nothing_found = rows() == 0 && !find_->IsEmpty();
    none_->SetLabel(nothing_found ? shown(desk_.words().say(Sentence::find_nothing)) : wxString());
    none_->Wrap(GetClientSize().GetWidth() - 2 * gap);
    none_->Show(nothing_found);
    Layout();
}

void ListPane::open_row(std::int64_t record) {
    told(this, [&] { desk_.go(list_of(desk_).opened(desk_.view(), record)); });
}

void ListPane::on_find_key(wxKeyEvent& event) {
    switch (event.GetKeyCode()) {
        case WXK_ESCAPE:
            find_->Clear();
            return;
        case WXK_DOWN:
        case WXK_RETURN:
        case WXK_NUMPAD_ENTER:
            if (rows() == 0) return;
            if (!list_->selected()) {
                list_->select_first();
                open_row(*list_->selected());
            }
            focus_list();
            return;
        default:
            event.Skip();
    }
}

void ListPane::focus_find() {
    find_->SetFocus();
    find_->SelectAll();
}

void ListPane::focus() {
    if (list_->selected())
        focus_list();
    else
        focus_find();
}

void ListPane::focus_list() {
    list_->focus_rows();
}

}  // namespace lowledger::window
