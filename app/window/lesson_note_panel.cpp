#include "app/window/lesson_note_panel.h"

#include <algorithm>
#include <wx/sizer.h>

#include "app/desk/day.h"
#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "model/studio/questions.h"
#include "reports/words/names.h"

namespace lowledger::window {
namespace {

using words::Sentence;

constexpr int least_text_height = 72;
constexpr int note_width = 640;

}  // namespace

LessonNotePanel::LessonNotePanel(wxWindow* parent, const Tools& tools) : wxPanel(parent), tools_(tools) {
    empty_ = new EmptyPage(this, tools.menus);
    note_ = new wxPanel(this);
    heading_ = heading(note_, {});
    about_ = new Paragraph(note_);
    auto* fields = new wxBoxSizer(wxVERTICAL);
    fields->Add(heading_, wxSizerFlags().Expand());
    fields->Add(about_, wxSizerFlags().Expand().Border(wxTOP, gap / 2));
    fields->Add(make_outcome(), wxSizerFlags().Expand().Border(wxTOP, gap));
    texts_ = {
        text_field(*fields, _("&Done:"), "lesson done", desk::LessonText::done),
        text_field(*fields, _("Ne&xt:"), "lesson next", desk::LessonText::next),
        text_field(*fields, _("Private re&mark, never printed:"), "lesson remark", desk::LessonText::remark)};
    note_->SetSizer(fields);
    note_->SetMaxSize(wxSize(note_width, -1));
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(note_, wxSizerFlags(1).Expand().Border(wxALL, 2 * gap));
    all->Add(empty_, wxSizerFlags(1).Expand());
    SetSizer(all);
}

wxSizer* LessonNotePanel::make_outcome() {
    auto* line = new wxBoxSizer(wxHORIZONTAL);
    auto* label = new wxStaticText(note_, wxID_ANY, _("Lesson &was:"));
    outcome_ = new wxChoice(note_, wxID_ANY);
    name_for_readers(outcome_, utf8(_("How the lesson went")));
    outcome_->SetName("lesson outcome");
    owed_ = new wxCheckBox(note_, wxID_ANY, _("A ma&ke-up lesson is owed"));
    owed_->SetName("lesson owed");
    line->Add(label, wxSizerFlags().CentreVertical());
    line->Add(outcome_, wxSizerFlags().CentreVertical().Border(wxLEFT, gap / 2));
    line->Add(owed_, wxSizerFlags().CentreVertical().Border(wxLEFT, 2 * gap));
    outcome_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
        const auto& key = outcomes_.at(static_cast<std::size_t>(event.GetSelection())).key;
        told(this, [&] { desk::file_outcome(tools_.desk, key); });
    });
    owed_->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent& event) {
        if (lesson_) told(this, [&] { desk::file_make_up_owed(tools_.desk, *lesson_, event.IsChecked()); });
    });
    return line;
}

CommitField* LessonNotePanel::text_field(wxSizer& under, const wxString& label, const wxString& name,
                                         desk::LessonText which) {
    auto* title = new wxStaticText(note_, wxID_ANY, label);
    auto* field = new CommitField(
        note_, -1,
        [this, which](const wxString& text, CommitField::By) {
            if (!lesson_ || !tools_.desk.may_write()) return;
            told(this, [&] { desk::file_text(tools_.desk, *lesson_, which, utf8(wxString(text).Trim())); });
        },
        wxTE_MULTILINE);
    field->SetMinSize(wxSize(-1, least_text_height));
    name_for_readers(field, utf8(wxControl::RemoveMnemonics(label)));
    field->SetName(name);
    under.Add(title, wxSizerFlags().Border(wxTOP, gap + gap / 2));
    under.Add(field, wxSizerFlags(1).Expand().Border(wxTOP, gap / 2));
    return field;
}

void LessonNotePanel::refresh() {
    const auto& desk = tools_.desk;
    const auto& lesson = desk.lesson();
    note_->Show(lesson.has_value());
    empty_->Show(!lesson);
    lesson_.reset();
    if (!lesson) {
        empty_->show(desk.words().say(Sentence::note_empty, {{"name", studio::called(*desk.student())}}),
                     {{"lesson.begin", _("&Begin today's lesson")}});
        Layout();
        return;
    }
    lesson_ = lesson->id;
    heading_->SetLabelText(
        shown(desk.words().say(Sentence::note_heading, {{"date", desk::day_title(desk.words(), lesson->on)},
                                                        {"span", desk::span_text(desk.words(), *lesson)}})));
    about_->say(about(*lesson));
    show_outcome(*lesson);
    const std::array<const std::string*, 3> texts{&lesson->done, &lesson->next, &lesson->private_remark};
    for (std::size_t i = 0; i < texts_.size(); ++i) {
        texts_[i]->set_counted(shown(*texts[i]));
        texts_[i]->SetEditable(desk.may_write());
    }
    Layout();
}

void LessonNotePanel::show_outcome(const studio::Lesson& lesson) {
    const auto& desk = tools_.desk;
    const auto student = desk::student_on_page(desk);
    outcomes_ = desk::outcomes(desk.words(), lesson, student);
    const auto now = desk::outcome_of(lesson, student);
    wxArrayString texts;
    int selected = wxNOT_FOUND;
    for (const auto& outcome : outcomes_) {
        if (outcome.key == now) selected = static_cast<int>(texts.size());
        texts.Add(shown(outcome.text));
    }
    if (outcome_->GetStrings() != texts) outcome_->Set(texts);
    outcome_->SetSelection(selected);
    outcome_->Enable(desk.may_write());
    owed_->SetValue(lesson.make_up_owed);
    owed_->Enable(desk.may_write());
}

std::string LessonNotePanel::about(const studio::Lesson& lesson) const {
    const auto& desk = tools_.desk;
    const auto& words = desk.words();
    std::string text;
    const auto add = [&](const std::string& sentence) { text += (text.empty() ? "" : " ") + sentence; };
    if (lesson.group) add(words.say(Sentence::note_group, {{"name", desk::who_has(desk.file(), lesson)}}));
    if (lesson.instead_of)
        if (const auto original = desk.file().lesson(*lesson.instead_of))
            add(words.say(Sentence::note_stands_for, {{"date", words::date_text(words, original->on)}}));
    return text;
}

void LessonNotePanel::focus_typing() {
    if (!note_->IsShown()) {
        empty_->SetFocus();
        return;
    }
    const auto first =
        std::ranges::find_if(texts_, [](const CommitField* field) { return field->IsEmpty(); });
    (first == texts_.end() ? texts_.front() : *first)->SetFocus();
}

}  // namespace lowledger::window
