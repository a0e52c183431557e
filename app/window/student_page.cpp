#include "app/window/student_page.h"

#include <wx/sizer.h>

#include "app/desk/places.h"
#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "model/studio/kind_of.h"
#include "model/studio/questions.h"
#include "reports/words/names.h"

namespace lowledger::window {
namespace {

using words::Sentence;

Sentence level_name(studio::Level level) {
    switch (level) {
        case studio::Level::beginner:
            return Sentence::level_beginner;
        case studio::Level::middle:
            return Sentence::level_middle;
        case studio::Level::advanced:
            return Sentence::level_advanced;
    }
    return Sentence::level_beginner;
}

}  // namespace

StudentPage::StudentPage(wxWindow* parent, const Tools& tools) : PlacePage(parent), tools_(tools) {
    name_ = new wxStaticText(this, wxID_ANY, {}, wxDefaultPosition, wxDefaultSize,
                             wxST_ELLIPSIZE_END | wxST_NO_AUTORESIZE);
    name_->SetFont(name_->GetFont().Scaled(1.6F).Bold());
    about_ = new wxStaticText(this, wxID_ANY, {}, wxDefaultPosition, wxDefaultSize,
                              wxST_ELLIPSIZE_END | wxST_NO_AUTORESIZE);
    horn_label_ = new wxStaticText(this, wxID_ANY, _("Hor&n:"));
    horns_ = new wxChoice(this, wxID_ANY);
    name_for_readers(horns_, utf8(_("Horn")));
    auto* who = new wxBoxSizer(wxVERTICAL);
    who->Add(name_, wxSizerFlags().Expand());
    who->Add(about_, wxSizerFlags().Expand().Border(wxTOP, 2));
    auto* head = new wxBoxSizer(wxHORIZONTAL);
    head->Add(who, wxSizerFlags(1).CentreVertical());
    head->Add(horn_label_, wxSizerFlags().CentreVertical());
    head->Add(horns_, wxSizerFlags().CentreVertical().Border(wxLEFT, gap / 2));

    empty_ = new EmptyPage(this, tools.menus);
    sections_ = new wxNotebook(this, wxID_ANY);
    sheet_ = new SheetPanel(sections_, tools);
    settings_ = new SettingsPanel(sections_, tools);
    routines_ = new RoutinePanel(sections_, tools);
    const std::vector<wxWindow*> pages{sheet_, settings_, routines_};
    const auto& entries = desk::entry_of(desk::Place::students).sections;
    for (std::size_t i = 0; i < entries.size(); ++i)
        sections_->AddPage(pages.at(i), shown(desk::title_of(entries[i])));
    name_for_readers(sections_, utf8(_("Sections")));

    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(head, wxSizerFlags().Expand().Border(wxALL, gap + 2));
    all->Add(sections_, wxSizerFlags(1).Expand());
    all->Add(empty_, wxSizerFlags(1).Expand());
    SetSizer(all);

    sections_->Bind(wxEVT_NOTEBOOK_PAGE_CHANGED, [this](wxBookCtrlEvent& event) {
        if (event.GetEventObject() != sections_) return;
        desk::View view = tools_.desk.view();
        const auto& entry =
            desk::entry_of(desk::Place::students).sections.at(static_cast<std::size_t>(event.GetSelection()));
        if (view.place == desk::Place::students && desk::section_of(view) != entry.section) {
            view.section = entry.section;
            told(this, [&] { tools_.desk.go(view); });
        }
        event.Skip();
    });
    horns_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
        desk::View view = tools_.desk.view();
        view.horn = tools_.desk.horns_of_student().at(static_cast<std::size_t>(event.GetSelection())).id;
        told(this, [&] { tools_.desk.go(view); });
    });
}

void StudentPage::refresh(const desk::News& news) {
    auto& desk = tools_.desk;
    if (!desk.student()) return;
    if (news.records || news.view) refresh_head();
    const bool has_horn = desk.horn().has_value();
    sections_->Show(has_horn);
    empty_->Show(!has_horn);
    if (!has_horn) {
        empty_->show(
            desk.words().say(Sentence::student_without_horn, {{"name", studio::called(*desk.student())}}),
            {{"student.horn", _("Choose &horn…")}});
    } else {
        const auto section = desk::section_number(desk.view());
        if (sections_->GetSelection() != static_cast<int>(section)) sections_->ChangeSelection(section);
        if (news.sheet || news.records) sheet_->refresh();
        if (news.records || news.view) routines_->refresh();
        if (news.answer || news.records) {
            sheet_->refresh_answer();
            settings_->refresh();
        }
    }
    Layout();
}

void StudentPage::refresh_head() {
    const auto& desk = tools_.desk;
    const auto& student = *desk.student();
    name_->SetLabelText(shown(student.name));
    name_->SetToolTip(shown(student.name));
    std::string about = desk.words().say(level_name(student.level));
    if (!student.group.empty()) about += " · " + student.group;
    if (student.archived) about += " · " + desk.words().say(Sentence::list_archived);
    about_->SetLabelText(shown(about));
    about_->SetToolTip(shown(about));
    wxArrayString titles;
    int selected = wxNOT_FOUND;
    for (const auto& horn : desk.horns_of_student()) {
        if (desk.horn() && horn.id == desk.horn()->id) selected = static_cast<int>(titles.size());
        titles.Add(shown(horn.mark + " · " + words::kind_name(studio::kind_of(horn))));
    }
    if (horns_->GetStrings() != titles) horns_->Set(titles);
    horns_->SetSelection(selected);
    horns_->Show(!titles.empty());
    horn_label_->Show(!titles.empty());
}

void StudentPage::focus_section() {
    if (!sections_->IsShown()) return;
    if (desk::section_of(tools_.desk.view()) == desk::Section::sheet)
        sheet_->focus_typing();
    else if (desk::section_of(tools_.desk.view()) == desk::Section::routines)
        routines_->focus_rows();
    else
        sections_->SetFocus();
}

}  // namespace lowledger::window
