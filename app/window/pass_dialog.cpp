#include "app/window/pass_dialog.h"

#include <algorithm>
#include <wx/display.h>
#include <wx/msgdlg.h>
#include <wx/sizer.h>

#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "model/studio/note_style.h"
#include "reports/words/names.h"
#include "reports/words/tuning_words.h"

namespace lowledger::window {
namespace {

using desk::PassCell;
using words::Sentence;

constexpr int field_width = 64;
constexpr int name_width = 220;
constexpr int row_gap = 3;
constexpr int column_gap = 8;
/// Of a player's line name and horn take a column each, a note two: what is played, and the field.
constexpr int columns_of_note = 2;

horns::NoteStyle style_of(const desk::Desk& desk, const pages::Player& player) {
    return pages::note_style(desk.file().facts(), player);
}

int column_of(std::size_t note) {
    return 2 + columns_of_note * static_cast<int>(note);
}

}  // namespace

PassDialog::PassDialog(wxWindow* parent, const Tools& tools, const std::string& title, desk::PassEntry& pass)
    : wxDialog(parent, wxID_ANY, shown(title), wxDefaultPosition, wxDefaultSize,
               wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER),
      tools_(tools),
      pass_(pass) {
    SetName("section pass");
    const auto& words = tools.desk.words();
    auto* hint = new Paragraph(this);
    rows_ = new wxScrolledWindow(this);
    rows_->SetScrollRate(0, 12);
    with_steady_bars(rows_);
    make_rows();
    so_far_ = new wxStaticText(this, wxID_ANY, {});
    auto* away = new wxButton(this, wxID_ANY, shown(words.say(Sentence::pass_throw_away)));
    done_ = new wxButton(this, wxID_OK, shown(words.say(Sentence::pass_done)));

    auto* buttons = new wxBoxSizer(wxHORIZONTAL);
    buttons->Add(so_far_, wxSizerFlags(1).CentreVertical());
    buttons->Add(away, wxSizerFlags().Border(wxRIGHT, gap));
    buttons->Add(done_);
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(hint, wxSizerFlags().Expand().Border(wxALL, margin));
    all->Add(rows_, wxSizerFlags(1).Expand().Border(wxLEFT | wxRIGHT, margin));
    all->Add(buttons, wxSizerFlags().Expand().Border(wxALL, margin));
    SetSizer(all);
    hint->say(words.say(Sentence::pass_hint));
    show_state();
    take_room();

    done_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { end_well(); });
    away->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { throw_away(); });
    // Closing the dialog is being done: what was typed is worth keeping.
    SetEscapeId(wxID_OK);
    Bind(wxEVT_CLOSE_WINDOW, [this](wxCloseEvent&) { end_well(); });
}

void PassDialog::make_rows() {
    auto* grid = new wxGridBagSizer(row_gap, column_gap);
    // Rows of sentences that are not said take no room.
    grid->SetEmptyCellSize(wxSize(0, 0));
    make_head(*grid);
    for (std::size_t player = 0; player < pass_.players().size(); ++player)
        make_row(*grid, player);
    grid->AddGrowableCol(column_of(pass_.notes().size()));
    rows_->SetSizer(grid);
    rows_->FitInside();
}

void PassDialog::make_head(wxGridBagSizer& grid) {
    const auto facts = tools_.desk.file().facts();
    const horns::NoteStyle style{.accidentals = facts.accidentals, .naming = facts.naming};
    grid.Add(heading(rows_, tools_.desk.words().say(Sentence::pass_player)), wxGBPosition(0, 0));
    for (std::size_t note = 0; note < pass_.notes().size(); ++note)
        grid.Add(heading(rows_, words::tuner_name(pass_.notes()[note], style)),
                 wxGBPosition(0, column_of(note) + 1), wxDefaultSpan, wxALIGN_RIGHT);
    // Takes what room is left, so that sentences under the rows have it.
    grid.Add(0, 0, wxGBPosition(0, column_of(pass_.notes().size())));
}

void PassDialog::make_row(wxGridBagSizer& grid, std::size_t player) {
    const auto& words = tools_.desk.words();
    const auto& of = pass_.players()[player];
    const int line = 1 + 2 * static_cast<int>(player);
    const std::string horn = of.horn.mark.empty() ? words::kind_name(of.kind) : of.horn.mark;
    auto* name = new wxStaticText(rows_, wxID_ANY, shown_in_label(of.student.name), wxDefaultPosition,
                                  wxSize(name_width, -1), wxST_ELLIPSIZE_END);
    name->SetToolTip(shown(of.student.name + " · " + words::kind_name(of.kind)));
    grid.Add(name, wxGBPosition(line, 0), wxDefaultSpan, wxALIGN_CENTRE_VERTICAL);
    grid.Add(new wxStaticText(rows_, wxID_ANY, shown_in_label(horn)), wxGBPosition(line, 1), wxDefaultSpan,
             wxALIGN_CENTRE_VERTICAL);
    const auto style = style_of(tools_.desk, of);
    for (std::size_t note = 0; note < pass_.notes().size(); ++note) {
        const PassCell cell{player, note};
        const auto& played = pass_.played(cell);
        if (!played) {
            grid.Add(new wxStaticText(rows_, wxID_ANY, shown(words.say(Sentence::pass_not_on_this_horn))),
                     wxGBPosition(line, column_of(note)), wxGBSpan(1, columns_of_note),
                     wxALIGN_RIGHT | wxALIGN_CENTRE_VERTICAL);
            continue;
        }
        const std::string text =
            words::note_name(played->note, style) + "  " + words::fingering_label(of.kind, played->fingering);
        grid.Add(new wxStaticText(rows_, wxID_ANY, shown_in_label(text)), wxGBPosition(line, column_of(note)),
                 wxDefaultSpan, wxALIGN_RIGHT | wxALIGN_CENTRE_VERTICAL | wxLEFT, gap);
        const words::Speech speech{words, of.kind, style};
        const auto said =
            words.say(Sentence::pass_field,
                      {{"name", of.student.name},
                       {"played", words::played_and_tuner(speech, played->note, played->fingering)}});
        grid.Add(make_field(cell, said), wxGBPosition(line, column_of(note) + 1));
    }
    questions_.push_back(new wxStaticText(rows_, wxID_ANY, {}));
    questions_.back()->SetFont(questions_.back()->GetFont().Bold());
    questions_.back()->Hide();
    grid.Add(questions_.back(), wxGBPosition(line + 1, 0), wxGBSpan(1, column_of(pass_.notes().size()) + 1),
             wxBOTTOM, row_gap);
}

CommitField* PassDialog::make_field(PassCell cell, const std::string& name) {
    auto* field = new CommitField(
        rows_, field_width,
        [this, cell](const wxString& text, CommitField::By by) { hand_over(cell, text, by); }, wxTE_RIGHT);
    name_for_readers(field, name);
    field->SetName("pass " + std::to_string(cell.player) + " " + std::to_string(cell.note));
    field->on_restore([this, cell] {
        pass_.restore(cell);
        show_state();
    });
    field->Bind(wxEVT_CHAR_HOOK, [this, cell](wxKeyEvent& event) { on_key(event, cell); });
    fields_[cell] = field;
    return field;
}

void PassDialog::hand_over(PassCell cell, const wxString& text, CommitField::By by) {
    told(this, [&] {
        const auto outcome = pass_.type(cell, utf8(text.Strip(wxString::both)));
        show_state();
        using Kind = desk::PassEntry::Outcome::Kind;
        const bool stays = outcome.kind == Kind::asks || outcome.kind == Kind::refused;
        if (by != CommitField::By::enter) return;
        if (stays)
            fields_.at(cell)->SelectAll();
        else
            go_on(cell);
    });
}

void PassDialog::go_on(PassCell from) {
    if (const auto next = pass_.after(from))
        focus(*next);
    else
        done_->SetFocus();
}

void PassDialog::on_key(wxKeyEvent& event, PassCell cell) {
    const bool plain = !event.HasAnyModifiers();
    std::optional<PassCell> neighbour;
    if (plain && event.GetKeyCode() == WXK_DOWN) neighbour = pass_.below(cell);
    if (plain && event.GetKeyCode() == WXK_UP) neighbour = pass_.above(cell);
    if (neighbour)
        focus(*neighbour);
    else if (plain && event.GetKeyCode() == WXK_ESCAPE && fields_.at(cell)->has_uncounted())
        fields_.at(cell)->restore();
    else
        event.Skip();
}

void PassDialog::focus(PassCell cell) {
    fields_.at(cell)->SetFocus();
    fields_.at(cell)->SelectAll();
}

void PassDialog::show_state() {
    int all = 0;
    for (const auto& [cell, field] : fields_) {
        ++all;
        const std::string question = pass_.question(cell);
        if (question.empty())
            field->set_counted(shown(pass_.text(cell)));
        else
            field->set_counted(shown(pass_.reading_text(cell)), shown(pass_.text(cell)));
        describe_for_readers(field, question);
    }
    for (std::size_t player = 0; player < questions_.size(); ++player)
        show_question(player);
    so_far_->SetLabel(
        shown(tools_.desk.words().say_counted(Sentence::pass_so_far_one, Sentence::pass_so_far_many,
                                              pass_.count(), {{"all", std::to_string(all)}})));
    rows_->FitInside();
    rows_->Layout();
}

void PassDialog::show_question(std::size_t player) {
    const auto& words = tools_.desk.words();
    const auto style = style_of(tools_.desk, pass_.players()[player]);
    wxString text;
    for (std::size_t note = 0; note < pass_.notes().size(); ++note) {
        const PassCell cell{player, note};
        std::string question = pass_.question(cell);
        if (question.empty()) continue;
        if (pass_.asks(cell)) question = words.say(Sentence::sheet_enter_again, {{"question", question}});
        const auto line =
            words.say(Sentence::pass_pending,
                      {{"name", words::note_name(pass_.played(cell)->note, style)}, {"question", question}});
        text += (text.empty() ? wxString() : wxString("\n")) + shown_in_label(line);
    }
    if (questions_[player]->GetLabel() == text) return;
    questions_[player]->SetLabel(text);
    questions_[player]->Wrap(rows_->GetClientSize().GetWidth() - 2 * gap);
    questions_[player]->Show(!text.empty());
}

void PassDialog::leave() {
    if (auto* field = dynamic_cast<CommitField*>(wxWindow::FindFocus())) field->leave();
}

void PassDialog::end_well() {
    leave();
    if (const auto pending = pass_.first_pending()) {
        focus(*pending);
        wxBell();
        return;
    }
    EndModal(wxID_OK);
}

void PassDialog::throw_away() {
    leave();
    const auto& words = tools_.desk.words();
    if (pass_.count() > 0) {
        const auto question = words.say_counted(Sentence::ask_throw_away_pass_one,
                                                Sentence::ask_throw_away_pass_many, pass_.count());
        wxMessageDialog sure(this, shown(question), GetTitle(), wxYES_NO | wxNO_DEFAULT | wxICON_QUESTION);
        sure.SetYesNoLabels(shown(words.say(Sentence::verb_throw_away)), _("Never mind"));
        if (sure.ShowModal() != wxID_YES) return;
    }
    EndModal(wxID_CANCEL);
}

void PassDialog::take_room() {
    constexpr int least_height = 240;
    const wxRect screen = wxDisplay(wxDisplay::GetFromWindow(GetParent())).GetClientArea();
    const wxSize wish = rows_->GetSizer()->CalcMin();
    const wxSize around = GetSizer()->CalcMin() - rows_->GetMinClientSize();
    const int width = std::min(wish.GetWidth() + 2 * margin + 24, screen.GetWidth() * 9 / 10);
    const int height = std::clamp(wish.GetHeight() + around.GetHeight() + 3 * margin, least_height,
                                  screen.GetHeight() * 9 / 10);
    SetClientSize(width, height);
    SetMinClientSize(wxSize(std::min(width, 480), least_height));
    CentreOnParent();
}

bool PassDialog::type() {
    if (const auto first = pass_.first()) focus(*first);
    return ShowModal() == wxID_OK;
}

}  // namespace lowledger::window
