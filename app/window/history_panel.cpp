#include "app/window/history_panel.h"

#include <wx/sizer.h>

#include "app/desk/places.h"
#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"

namespace lowledger::window {

using words::Sentence;

HistoryPanel::HistoryPanel(wxWindow* parent, const Tools& tools) : wxPanel(parent), tools_(tools) {
    const auto& words = tools.desk.words();
    views_ = new wxNotebook(this, wxID_ANY);
    name_for_readers(views_, utf8(_("History")));
    auto* all_that_was = new wxPanel(views_);
    list_ = new ListingView(all_that_was, tools.menus, words.say(Sentence::history_student_heading));
    list_->SetName("history");
    empty_ = new EmptyPage(all_that_was, tools.menus);
    auto* listed = new wxBoxSizer(wxVERTICAL);
    listed->Add(list_, wxSizerFlags(1).Expand());
    listed->Add(empty_, wxSizerFlags(1).Expand());
    all_that_was->SetSizer(listed);
    sheets_ = new SheetsPanel(views_, tools);
    views_->AddPage(all_that_was, shown(words.say(Sentence::history_student_heading)));
    views_->AddPage(sheets_, shown(words.say(Sentence::sheets_heading)));
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(views_, wxSizerFlags(1).Expand().Border(wxTOP, gap));
    SetSizer(all);
    views_->Bind(wxEVT_NOTEBOOK_PAGE_CHANGED, [this](wxBookCtrlEvent& event) {
        // The page's own sections must not hear of it.
        desk::View view = tools_.desk.view();
        view.over_time = event.GetSelection() == 1;
        if (desk::section_of(view) == desk::Section::history) told(this, [&] { tools_.desk.go(view); });
    });
    list_->on_opened([this](std::int64_t row) {
        told(this, [&] {
            const auto item = items_.at(static_cast<std::size_t>(row));
            desk::open_item(tools_.desk, item);
        });
    });
}

void HistoryPanel::refresh() {
    const auto& desk = tools_.desk;
    items_ = desk::student_history(desk);
    list_->show(desk::history_listing(items_, desk.words()));
    const std::size_t wanted = desk.view().over_time ? 1 : 0;
    if (views_->GetSelection() != static_cast<int>(wanted)) views_->ChangeSelection(wanted);
    sheets_->refresh();
    list_->Show(!items_.empty());
    empty_->Show(items_.empty());
    if (items_.empty())
        empty_->show(desk.words().say(Sentence::history_student_empty),
                     {{"lesson.begin", _("&Begin today's lesson")}});
    list_->GetParent()->Layout();
    Layout();
}

void HistoryPanel::focus_rows() {
    if (tools_.desk.view().over_time) {
        sheets_->focus_rows();
        return;
    }
    if (!list_->IsShown()) {
        empty_->SetFocus();
        return;
    }
    if (!list_->selected()) list_->select_first();
    list_->focus_rows();
}

}  // namespace lowledger::window
