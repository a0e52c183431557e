#include "app/window/student_page.h"

#include <wx/sizer.h>

#include "app/desk/last_time.h"
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

    sections_ = new wxNotebook(this, wxID_ANY);
    last_time_ = new BriefView(sections_, tools.desk.words().say(Sentence::today_brief));
    sheet_section_ = with_horn([&](wxWindow* page) { return sheet_ = new SheetPanel(page, tools); });
    settings_section_ = with_horn([&](wxWindow* page) { return settings_ = new SettingsPanel(page, tools); });
    routines_ = new RoutinePanel(sections_, tools);
    note_ = new LessonNotePanel(sections_, tools);
    history_ = new HistoryPanel(sections_, tools);
    const std::vector<wxWindow*> pages{
        last_time_, sheet_section_.page, settings_section_.page, routines_, note_, history_};
    const auto& entries = desk::entry_of(desk::Place::students).sections;
    for (std::size_t i = 0; i < entries.size(); ++i)
        sections_->AddPage(pages.at(i), shown(desk::title_of(entries[i])));
    name_for_readers(sections_, utf8(_("Sections")));

    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(head, wxSizerFlags().Expand().Border(wxALL, gap + 2));
    all->Add(sections_, wxSizerFlags(1).Expand());
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
    const auto section = desk::section_number(desk.view());
    if (sections_->GetSelection() != static_cast<int>(section)) sections_->ChangeSelection(section);
    show_with_horn(sheet_section_);
    show_with_horn(settings_section_);
    if (desk.horn()) {
        if (news.sheet || news.records) sheet_->refresh();
        if (news.answer || news.records) {
            sheet_->refresh_answer();
            settings_->refresh();
        }
    }
    if (news.records || news.view) {
        routines_->refresh();
        refresh_section();
    }
    Layout();
}

StudentPage::WithHorn StudentPage::with_horn(const std::function<wxWindow*(wxWindow*)>& make) {
    WithHorn section;
    section.page = new wxPanel(sections_);
    section.content = make(section.page);
    section.empty = new EmptyPage(section.page, tools_.menus);
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(section.content, wxSizerFlags(1).Expand());
    all->Add(section.empty, wxSizerFlags(1).Expand());
    section.page->SetSizer(all);
    return section;
}

void StudentPage::show_with_horn(const WithHorn& section) {
    const auto& desk = tools_.desk;
    const bool has_horn = desk.horn().has_value();
    section.content->Show(has_horn);
    section.empty->Show(!has_horn);
    if (!has_horn)
        section.empty->show(
            desk.words().say(Sentence::student_without_horn, {{"name", studio::called(*desk.student())}}),
            {{"student.horn", _("Choose &horn…")}});
    section.page->Layout();
}

void StudentPage::refresh_section() {
    // What the note holds is handed over from other sections too.
    note_->refresh();
    switch (desk::section_of(tools_.desk.view())) {
        case desk::Section::last_time:
            last_time_->show(desk::last_time(tools_.desk));
            break;
        case desk::Section::history:
            history_->refresh();
            break;
        default:
            break;
    }
}

void StudentPage::refresh_head() {
    const auto& desk = tools_.desk;
    const auto& student = *desk.student();
    name_->SetLabelText(shown(student.name));
    name_->SetToolTip(shown(student.name));
    std::string about = words::level_name(desk.words(), student.level);
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
    switch (desk::section_of(tools_.desk.view())) {
        case desk::Section::last_time:
            last_time_->SetFocus();
            break;
        case desk::Section::sheet:
            if (tools_.desk.horn())
                sheet_->focus_typing();
            else
                sheet_section_.empty->SetFocus();
            break;
        case desk::Section::routines:
            routines_->focus_rows();
            break;
        case desk::Section::lesson_note:
            note_->focus_typing();
            break;
        case desk::Section::history:
            history_->focus_rows();
            break;
        default:
            sections_->SetFocus();
    }
}

}  // namespace lowledger::window
