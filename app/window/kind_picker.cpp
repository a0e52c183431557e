#include "app/window/kind_picker.h"

#include "app/desk/kind_list.h"
#include "app/window/access.h"
#include "app/window/text.h"

namespace lowledger::window {
namespace {

using words::Sentence;

constexpr int list_width = 430;
constexpr int list_height = 240;

}  // namespace

wxTextCtrl* KindPicker::make_field(wxWindow* parent) {
    field_ = new wxTextCtrl(parent, wxID_ANY);
    field_->SetName("find kind");
    name_for_readers(field_, words_.say(Sentence::kinds_kind));
    field_->SetHint(_("a few letters: tuba 4, F, comp"));
    field_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { show_found(); });
    field_->Bind(wxEVT_KEY_DOWN, &KindPicker::on_key, this);
    return field_;
}

ListingView* KindPicker::make_list(wxWindow* parent, Menus& menus) {
    list_ = new ListingView(parent, menus, words_.say(Sentence::kinds_kind));
    list_->SetName("kinds");
    list_->SetMinSize(wxSize(list_width, list_height));
    list_->on_selected([this](std::int64_t row) { take(row); });
    show_found();
    return list_;
}

void KindPicker::choose(std::size_t kind) {
    list_->select(static_cast<std::int64_t>(kind));
    take(static_cast<std::int64_t>(kind));
}

const horns::HornKind* KindPicker::chosen() const {
    return chosen_ ? &kinds_.at(*chosen_) : nullptr;
}

void KindPicker::take(std::int64_t row) {
    const auto kind = static_cast<std::size_t>(row);
    if (chosen_ == kind) return;
    chosen_ = kind;
    if (chosen_now_) chosen_now_(kinds_.at(kind));
}

void KindPicker::show_found() {
    if (list_ == nullptr) return;
    list_->show(desk::kinds_listing(kinds_, words_, utf8(field_->GetValue())));
    if (field_->GetValue().empty() || list_->rows() == 0) return;
    // What is typed is on its way to the first that has it.
    if (!list_->selected()) list_->select_first();
    if (const auto row = list_->selected()) take(*row);
}

void KindPicker::on_key(wxKeyEvent& event) {
    if (event.GetKeyCode() != WXK_DOWN || list_->rows() == 0) {
        event.Skip();
        return;
    }
    if (!list_->selected()) list_->select_first();
    if (const auto row = list_->selected()) take(*row);
    list_->focus_rows();
}

}  // namespace lowledger::window
