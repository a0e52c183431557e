#include "app/window/terms_page.h"

#include <wx/sizer.h>

#include "app/desk/places.h"
#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "reports/words/names.h"

namespace lowledger::window {
namespace {

using words::Sentence;

desk::Table table_of(desk::Section section) {
    switch (section) {
        case desk::Section::lessons:
            return desk::Table::lessons;
        case desk::Section::holidays:
            return desk::Table::holidays;
        case desk::Section::groups:
            return desk::Table::groups;
        case desk::Section::years_end:
            return desk::Table::years_end;
        default:
            return desk::Table::timetable;
    }
}

}  // namespace

TermsPage::TermsPage(wxWindow* parent, const Tools& tools) : PlacePage(parent), tools_(tools) {
    name_ = new wxStaticText(this, wxID_ANY, {});
    name_->SetFont(name_->GetFont().Scaled(1.6F).Bold());
    days_ = new wxStaticText(this, wxID_ANY, {});
    sections_ = new wxNotebook(this, wxID_ANY);
    const auto& entries = desk::entry_of(desk::Place::terms).sections;
    for (const auto& entry : entries) {
        tables_.push_back(new TablePanel(sections_, tools, table_of(entry.section)));
        sections_->AddPage(tables_.back(), shown(desk::title_of(entry)));
    }
    name_for_readers(sections_, utf8(_("Sections")));
    auto* head = new wxBoxSizer(wxVERTICAL);
    head->Add(name_);
    head->Add(days_, wxSizerFlags().Border(wxTOP, 2));
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(head, wxSizerFlags().Expand().Border(wxALL, gap + 2));
    all->Add(sections_, wxSizerFlags(1).Expand());
    SetSizer(all);
    sections_->Bind(wxEVT_NOTEBOOK_PAGE_CHANGED, [this, &entries](wxBookCtrlEvent& event) {
        desk::View view = tools_.desk.view();
        const auto section = entries.at(static_cast<std::size_t>(event.GetSelection())).section;
        if (view.place == desk::Place::terms && desk::section_of(view) != section) {
            view.section = section;
            told(this, [&] { tools_.desk.go(view); });
        }
        event.Skip();
    });
}

void TermsPage::refresh(const desk::News& news) {
    if (!news.records && !news.view) return;
    const auto& desk = tools_.desk;
    if (!desk.term() || desk.view().place != desk::Place::terms) return;
    const auto& words = desk.words();
    name_->SetLabelText(shown(desk.term()->name));
    days_->SetLabelText(
        shown(words.say(Sentence::term_days, {{"first", words::date_text(words, desk.term()->first)},
                                              {"last", words::date_text(words, desk.term()->last)}})));
    const auto section = desk::section_number(desk.view());
    if (sections_->GetSelection() != static_cast<int>(section)) sections_->ChangeSelection(section);
    tables_.at(section)->refresh();
    Layout();
}

void TermsPage::focus_section() {
    tables_.at(desk::section_number(tools_.desk.view()))->focus_rows();
}

}  // namespace lowledger::window
