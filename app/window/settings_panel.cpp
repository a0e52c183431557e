#include "app/window/settings_panel.h"

#include <wx/settings.h>
#include <wx/sizer.h>

#include "app/desk/note_names.h"
#include "app/window/access.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "reports/words/check_words.h"
#include "reports/words/names.h"
#include "reports/words/tuning_words.h"

namespace lowledger::window {
namespace {

using words::Sentence;

/// How much was measured, how far off the notes are, and whether slides move.
std::string measured_and_moved(const words::Words& words, const desk::LiveAnswer& live) {
    const auto& profile = live.answer->profile;
    const auto sheets = words.say_counted(Sentence::sheets_one, Sentence::sheets_many, profile.sheets_used);
    const auto readings =
        words.say_counted(Sentence::readings_one, Sentence::readings_many, profile.takes_used);
    const auto before = std::to_string(words::whole_cents(live.answer->settings.mean_before));
    const auto after = std::to_string(words::whole_cents(live.answer->settings.mean_after));
    if (live.something_moves())
        return words.say(Sentence::settings_summary,
                         {{"sheets", sheets}, {"readings", readings}, {"before", before}, {"after", after}});
    // Until the tuning notes are in, nobody knows whether slides should move.
    return words.say(live.answer->enough.tuning_notes_in() ? Sentence::settings_summary_stay
                                                           : Sentence::settings_summary_now,
                     {{"sheets", sheets}, {"readings", readings}, {"before", before}});
}

/// The same, and whose other sheets it rests on.
std::string summary_of(const words::Words& words, const desk::LiveAnswer& live) {
    std::string summary = measured_and_moved(words, live);
    for (const std::string& sentence : words::rests_on_others(words, live.answer->profile))
        summary += " " + sentence;
    return summary;
}

}  // namespace

SettingsPanel::SettingsPanel(wxWindow* parent, const Tools& tools) : wxPanel(parent), tools_(tools) {
    const auto& words = tools.desk.words();
    empty_ = new EmptyPage(this, tools.menus);
    full_ = new wxPanel(this);
    summary_ = new Paragraph(full_);
    answer_ = new AnswerView(full_, tools, desk::ChartNotes::weighed);

    beside_ = new wxNotebook(full_, wxID_ANY);
    name_for_readers(beside_, utf8(_("Beside the settings")));
    auto* side = new wxPanel(beside_);
    auto* remains_heading = heading(side, words.say(Sentence::remains_heading));
    remaining_ =
        new wxScrolledWindow(side, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL | wxBORDER_THEME);
    remaining_->SetScrollRate(0, 12);
    remaining_->SetBackgroundColour(wxSystemSettings::GetColour(wxSYS_COLOUR_LISTBOX));
    with_steady_bars(remaining_);
    remains_ = new Paragraph(remaining_);
    auto* remaining_sizer = new wxBoxSizer(wxVERTICAL);
    remaining_sizer->Add(remains_, wxSizerFlags().Expand().Border(wxALL, gap / 2));
    remaining_->SetSizer(remaining_sizer);
    auto* table_heading = heading(side, words.say(Sentence::table_heading));
    table_ = new wxDataViewListCtrl(side, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                                    wxDV_ROW_LINES | wxDV_SINGLE);
    table_->AppendTextColumn(shown(words.say(Sentence::sheet_note)), wxDATAVIEW_CELL_INERT, 54);
    table_->AppendTextColumn(shown(words.say(Sentence::sheet_fingering)), wxDATAVIEW_CELL_INERT, 58);
    table_->AppendTextColumn(shown(words.say(Sentence::table_takes)), wxDATAVIEW_CELL_INERT, 78,
                             wxALIGN_RIGHT);
    table_->AppendTextColumn(shown(words.say(Sentence::table_before)), wxDATAVIEW_CELL_INERT, 60,
                             wxALIGN_RIGHT);
    table_->AppendTextColumn(shown(words.say(Sentence::table_after)), wxDATAVIEW_CELL_INERT, 50,
                             wxALIGN_RIGHT);
    // The last column takes what is left over; without it the numbers would stand far from their notes.
    table_->AppendTextColumn({}, wxDATAVIEW_CELL_INERT, -1);
    name_for_readers(table_, words.say(Sentence::table_heading));
    auto* side_sizer = new wxBoxSizer(wxVERTICAL);
    side_sizer->Add(remains_heading, wxSizerFlags().Expand().Border(wxBOTTOM, gap / 2));
    side_sizer->Add(remaining_, wxSizerFlags(1).Expand().Border(wxBOTTOM, 2 * gap));
    side_sizer->Add(table_heading, wxSizerFlags().Expand().Border(wxBOTTOM, gap / 2));
    side_sizer->Add(table_, wxSizerFlags(1).Expand());
    side->SetSizer(side_sizer);
    hand_ = new HandPanel(beside_, tools.desk);
    basis_ = new BasisPanel(beside_, tools);
    beside_->AddPage(side, _("What remains"));
    beside_->AddPage(hand_, _("Your hand"));
    beside_->AddPage(basis_, _("Rests on"));

    moved_ = new wxButton(full_, wxID_ANY, _("Slides move&d"));
    print_ = new wxButton(full_, wxID_ANY, _("&Print handout…"));
    moved_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { tools_.menus.run("settings.moved"); });
    print_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { tools_.menus.run("handout.print"); });

    auto* top = new wxBoxSizer(wxHORIZONTAL);
    top->Add(summary_, wxSizerFlags(1).CentreVertical());
    top->Add(moved_, wxSizerFlags().CentreVertical().Border(wxLEFT, gap));
    top->Add(print_, wxSizerFlags().CentreVertical().Border(wxLEFT, gap));
    auto* columns = new wxBoxSizer(wxHORIZONTAL);
    columns->Add(answer_, wxSizerFlags(3).Expand());
    columns->Add(beside_, wxSizerFlags(2).Expand().Border(wxLEFT, 2 * gap));
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(top, wxSizerFlags().Expand().Border(wxALL, gap));
    all->Add(columns, wxSizerFlags(1).Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    full_->SetSizer(all);

    auto* either = new wxBoxSizer(wxVERTICAL);
    either->Add(empty_, wxSizerFlags(1).Expand());
    either->Add(full_, wxSizerFlags(1).Expand());
    SetSizer(either);
    full_->Hide();
}

void SettingsPanel::refresh() {
    auto& desk = tools_.desk;
    const auto& live = desk.answer();
    if (!live.there() && live.refusal.empty()) return;
    const bool has_readings = !live.there() || live.answer->profile.takes_used > 0;
    empty_->Show(!has_readings);
    full_->Show(has_readings);
    if (!has_readings) {
        empty_->show(desk.words().say(Sentence::settings_empty),
                     {{"go.sheet", _("Go to the &tuning sheet")}, {"handout.print", _("&Print a form…")}});
    }
    moved_->Enable(desk::action("settings.moved").may_run(desk));
    print_->Enable(desk::action("handout.print").may_run(desk));
    answer_->refresh();
    hand_->refresh();
    if (live.there()) {
        refresh_table();
        refresh_remains();
        basis_->refresh();
    }
    Layout();
}

void SettingsPanel::show_beside(int part) {
    if (!full_->IsShown()) return;
    beside_->ChangeSelection(static_cast<std::size_t>(part));
    beside_->GetPage(static_cast<std::size_t>(part))->SetFocus();
}

void SettingsPanel::refresh_table() {
    const auto& live = tools_.desk.answer();
    const auto style = desk::note_style(tools_.desk);
    table_->DeleteAllItems();
    for (const auto& note : live.answer->settings.notes) {
        if (note.weight <= 0.0) continue;
        wxVector<wxVariant> row;
        row.push_back(shown(words::note_name_with_octave(note.note, style)));
        row.push_back(shown(words::fingering_label(live.inputs->kind, note.way.fingering)));
        row.push_back(wxString::Format("%d", note.way.takes));
        row.push_back(shown(words::cents_text(note.lean_before)));
        row.push_back(shown(words::cents_text(note.lean_after)));
        row.push_back(wxString());
        table_->AppendItem(row);
    }
}

void SettingsPanel::refresh_remains() {
    const auto& desk = tools_.desk;
    const auto& live = desk.answer();
    const words::Speech speech{desk.words(), live.inputs->kind, desk::note_style(desk)};
    summary_->say(summary_of(desk.words(), live));
    std::string text;
    for (const auto& note : live.answer->remains.notes)
        text += (text.empty() ? "" : "\n") + words::remaining_sentence(speech, live.answer->remains, note);
    if (text.empty()) {
        text = desk.words().say(
            Sentence::remains_nothing,
            {{"tolerance", std::to_string(words::whole_cents(live.answer->remains.tolerance))}});
    }
    remains_->say(text);
}

}  // namespace lowledger::window
