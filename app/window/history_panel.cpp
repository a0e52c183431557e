#include "app/window/history_panel.h"

#include <wx/sizer.h>

#include "app/window/errors.h"
#include "app/window/layout.h"

namespace lowledger::window {

using words::Sentence;

HistoryPanel::HistoryPanel(wxWindow* parent, const Tools& tools) : wxPanel(parent), tools_(tools) {
    const auto& words = tools.desk.words();
    list_ = new ListingView(this, tools.menus, words.say(Sentence::history_student_heading));
    list_->SetName("history");
    empty_ = new EmptyPage(this, tools.menus);
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(list_, wxSizerFlags(1).Expand().Border(wxTOP, gap));
    all->Add(empty_, wxSizerFlags(1).Expand());
    SetSizer(all);
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
    list_->Show(!items_.empty());
    empty_->Show(items_.empty());
    if (items_.empty())
        empty_->show(desk.words().say(Sentence::history_student_empty),
                     {{"lesson.begin", _("&Begin today's lesson")}});
    Layout();
}

void HistoryPanel::focus_rows() {
    if (!list_->IsShown()) {
        empty_->SetFocus();
        return;
    }
    if (!list_->selected()) list_->select_first();
    list_->focus_rows();
}

}  // namespace lowledger::window
