#include "app/window/sheet_panel.h"

#include <wx/button.h>
#include <wx/sizer.h>
#include <wx/statline.h>

#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "reports/words/names.h"

namespace lowledger::window {
namespace {

using words::Sentence;

constexpr int staff_width = 190;

}  // namespace

SheetPanel::SheetPanel(wxWindow* parent, const Tools& tools) : wxPanel(parent), tools_(tools) {
    auto* entry = new wxPanel(this);
    auto* which = new wxBoxSizer(wxHORIZONTAL);
    which->Add(new wxStaticText(entry, wxID_ANY, _("S&heet:")), wxSizerFlags().CentreVertical());
    sheets_ = new wxChoice(entry, wxID_ANY);
    name_for_readers(sheets_, utf8(_("Sheet")));
    which->Add(sheets_, wxSizerFlags(1).CentreVertical().Border(wxLEFT, gap / 2));
    auto* more = new wxButton(entry, wxID_ANY, _("M&ore notes"));
    which->Add(more, wxSizerFlags().CentreVertical().Border(wxLEFT, gap));

    head_ = new SheetHead(entry, tools.desk);
    rows_ = new SheetRows(entry, tools.desk);
    staff_ = new Drawing(entry, tools.faces);
    staff_->SetMinSize(wxSize(staff_width, -1));
    question_ = new Paragraph(entry);

    auto* middle = new wxBoxSizer(wxHORIZONTAL);
    middle->Add(rows_, wxSizerFlags(1).Expand());
    middle->Add(staff_, wxSizerFlags().Border(wxLEFT, gap));
    auto* left = new wxBoxSizer(wxVERTICAL);
    left->Add(which, wxSizerFlags().Expand().Border(wxBOTTOM, gap));
    left->Add(head_, wxSizerFlags().Expand());
    left->Add(new wxStaticLine(entry), wxSizerFlags().Expand().Border(wxTOP | wxBOTTOM, gap));
    // Two lines are kept free, so that a question does not push the fields away from under the typist.
    auto* said = new wxBoxSizer(wxHORIZONTAL);
    said->Add(0, 2 * question_->GetCharHeight());
    said->Add(question_, wxSizerFlags(1).Bottom());
    left->Add(said, wxSizerFlags().Expand().Border(wxBOTTOM, gap));
    left->Add(middle, wxSizerFlags(1).Expand());
    entry->SetSizer(left);

    answer_ = new AnswerView(this, tools, desk::ChartNotes::measured);
    auto* all = new wxBoxSizer(wxHORIZONTAL);
    all->Add(entry, wxSizerFlags(3).Expand().Border(wxALL, gap));
    all->Add(answer_, wxSizerFlags(2).Expand());
    SetSizer(all);

    rows_->on_row([this] { show_note(); });
    more->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { tools_.menus.run("sheet.more"); });
    sheets_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
        told(this, [&] {
            if (event.GetSelection() == 0)
                tools_.desk.show_sheet(std::nullopt);
            else
                tools_.desk.show_sheet(sheet_ids_.at(static_cast<std::size_t>(event.GetSelection()) - 1));
        });
    });
}

void SheetPanel::refresh() {
    if (tools_.desk.entry() == nullptr) return;
    refresh_sheets();
    head_->refresh();
    rows_->refresh();
    show_note();
}

void SheetPanel::refresh_answer() {
    if (tools_.desk.entry() != nullptr) rows_->refresh();
    answer_->refresh();
}

void SheetPanel::refresh_sheets() {
    const auto& words = tools_.desk.words();
    const auto shown_sheet = tools_.desk.entry()->sheet().id;
    wxArrayString titles;
    titles.Add(shown(words.say(Sentence::sheet_new)));
    sheet_ids_.clear();
    int selected = 0;
    for (const auto& sheet : tools_.desk.sheets()) {
        const int count = static_cast<int>(sheet.readings.size());
        titles.Add(shown(words.say_counted(Sentence::sheet_title_one, Sentence::sheet_title_many, count,
                                           {{"date", words::date_text(words, sheet.on)}})));
        sheet_ids_.push_back(sheet.id);
        if (sheet.id == shown_sheet) selected = static_cast<int>(titles.size()) - 1;
    }
    if (sheets_->GetStrings() != titles) sheets_->Set(titles);
    sheets_->SetSelection(selected);
}

void SheetPanel::show_note() {
    const auto* entry = tools_.desk.entry();
    if (entry == nullptr || entry->rows().empty()) return;
    const std::size_t at = std::min(rows_->row(), entry->rows().size() - 1);
    const auto row = entry->rows()[at];
    say_what_to_do(*entry, at);
    const auto pictures = tools_.pictures(true);
    const auto kind = tools_.desk.kind();
    const auto layout = [pictures, kind, row](units::Millimetres width) {
        return desk::note_on_staff(pictures, kind, row.note, row.fingering, width).page;
    };
    staff_->show(
        layout, tools_.desk.words().say(Sentence::staff_name),
        desk::note_on_staff(pictures, kind, row.note, row.fingering, units::Millimetres(50.0)).content);
    question_->GetParent()->Layout();
}

void SheetPanel::say_what_to_do(const desk::SheetEntry& entry, std::size_t row) {
    const auto& words = tools_.desk.words();
    const std::string question = entry.question(row);
    const wxFont font = GetFont();
    question_->SetFont(question.empty() ? font : font.Bold());
    if (entry.asks(row))
        question_->say(words.say(Sentence::sheet_enter_again, {{"question", question}}));
    else if (!question.empty())
        question_->say(question);
    else
        question_->say(tools_.desk.may_write() ? words.say(Sentence::sheet_hint) : std::string());
}

void SheetPanel::focus_typing() {
    if (tools_.desk.entry() != nullptr) rows_->focus(tools_.desk.entry()->first_empty());
}

void SheetPanel::leave() {
    head_->leave();
    rows_->leave();
}

}  // namespace lowledger::window
