#include "app/window/chart_panel.h"

#include <algorithm>
#include <variant>
#include <wx/button.h>
#include <wx/settings.h>
#include <wx/sizer.h>

#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"

namespace lowledger::window {
namespace {

using words::Sentence;

/// The smallest type of a printed page is too small for a screen: everything a third larger.
constexpr Scale chart_scale{96.0 / 25.4 * 4.0 / 3.0};
constexpr int find_width = 110;
constexpr int least_choice_width = 110;
constexpr int ways_height = 130;

}  // namespace

ChartPanel::ChartPanel(wxWindow* parent, const Tools& tools) : wxPanel(parent), tools_(tools) {
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(make_head(), wxSizerFlags().Expand().Border(wxALL, gap));
    problem_ = new Paragraph(this);
    problem_->SetFont(problem_->GetFont().Bold());
    about_ = new Paragraph(this);
    make_body();
    const auto row = wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap);
    all->Add(problem_, row);
    all->Add(about_, row);
    all->Add(staves_, wxSizerFlags(3).Expand());
    all->Add(table_, wxSizerFlags(3).Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    all->Add(ways_heading_, wxSizerFlags().Expand().Border(wxALL, gap));
    all->Add(why_, row);
    all->Add(ways_, wxSizerFlags(2).Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    SetSizer(all);
}

wxSizer* ChartPanel::make_head() {
    auto* head = new wxBoxSizer(wxHORIZONTAL);
    const auto label = [&](const wxString& text, int before) {
        auto* made = new wxStaticText(this, wxID_ANY, text);
        head->Add(made, wxSizerFlags().CentreVertical().Border(wxLEFT, before));
        return made;
    };
    const auto field = [&](wxWindow* control, int share) {
        head->Add(control, wxSizerFlags(share).CentreVertical().Border(wxLEFT, gap / 2));
    };
    label(_("Find &note:"), 0);
    find_ = new wxTextCtrl(this, wxID_ANY, {}, wxDefaultPosition, wxSize(find_width, -1), wxTE_PROCESS_ENTER);
    find_->SetName("find note");
    name_for_readers(find_, utf8(_("Find note")));
    find_->SetHint(shown("B\u266D, F#3"));
    field(find_, 0);
    label(_("Read &in:"), 2 * gap);
    readers_ = new wxChoice(this, wxID_ANY);
    readers_->SetName("chart reader");
    name_for_readers(readers_, utf8(_("Read in")));
    readers_->SetMinSize(wxSize(least_choice_width, -1));
    field(readers_, 1);
    players_label_ = label(_("&Leans:"), 2 * gap);
    players_ = new wxChoice(this, wxID_ANY);
    players_->SetName("chart player");
    name_for_readers(players_, utf8(_("Leans")));
    players_->SetMinSize(wxSize(least_choice_width, -1));
    field(players_, 1);
    auto* print = new wxButton(this, wxID_ANY, _("&Print chart…"));
    head->Add(print, wxSizerFlags().CentreVertical().Border(wxLEFT, 2 * gap));

    find_->Bind(wxEVT_TEXT_ENTER, [this](wxCommandEvent&) { find_typed(); });
    find_->Bind(wxEVT_KEY_DOWN, &ChartPanel::on_find_key, this);
    readers_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
        chart_->read_as(static_cast<std::size_t>(event.GetSelection()));
        refresh();
    });
    players_->Bind(wxEVT_CHOICE, [this](wxCommandEvent& event) {
        const int chosen = event.GetSelection();
        told(this, [&] {
            player_now_(chosen == 0 ? std::nullopt : std::optional(static_cast<std::size_t>(chosen) - 1));
        });
    });
    print->Bind(wxEVT_BUTTON,
                [this](wxCommandEvent&) { told(this, [this] { tools_.desk.front().show_chart(*chart_); }); });
    return head;
}

void ChartPanel::make_body() {
    const auto& words = tools_.desk.words();
    staves_ = new wxScrolledWindow(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL);
    staves_->SetScrollRate(0, 12);
    with_steady_bars(staves_);
    name_for_readers(staves_, words.say(Sentence::chart_section_name));
    staves_->SetBackgroundColour(wxSystemSettings::GetColour(wxSYS_COLOUR_LISTBOX));
    drawing_ = new Drawing(staves_, tools_.faces, chart_scale);
    auto* inner = new wxBoxSizer(wxVERTICAL);
    inner->Add(drawing_, wxSizerFlags().Expand().Border(wxALL, gap));
    staves_->SetSizer(inner);
    drawing_->Bind(wxEVT_LEFT_DOWN, &ChartPanel::on_click, this);
    table_ = new ListingView(this, tools_.menus, words.say(Sentence::chart_section_name));
    table_->SetName("chart table");
    table_->on_selected([this](std::int64_t note) {
        chart_->look_at(units::Pitch(static_cast<int>(note)));
        refresh_note();
    });
    ways_heading_ = heading(this, {});
    why_ = new Paragraph(this);
    ways_ = new ListingView(this, tools_.menus, words.say(Sentence::chart_column_others));
    ways_->SetName("ways");
    ways_->SetMinSize(wxSize(-1, ways_height));
}

void ChartPanel::show(desk::NoteChart& chart, const std::vector<std::string>& players,
                      std::optional<std::size_t> player) {
    chart_ = &chart;
    const auto& words = tools_.desk.words();
    wxArrayString readers;
    for (const auto& reader : chart.kind().readers)
        readers.Add(shown(reader.name));
    if (readers_->GetStrings() != readers) readers_->Set(readers);
    wxArrayString leans;
    leans.Add(shown(words.say(Sentence::chart_leans_designed)));
    for (const auto& name : players)
        leans.Add(shown(words.say(Sentence::chart_leans_of, {{"student", name}})));
    if (players_->GetStrings() != leans) players_->Set(leans);
    players_->SetSelection(player ? static_cast<int>(*player) + 1 : 0);
    players_label_->Show(!players.empty());
    players_->Show(!players.empty());
    problem_->say({});
    refresh();
}

void ChartPanel::refresh() {
    const auto& words = tools_.desk.words();
    readers_->SetSelection(static_cast<int>(chart_->reader()));
    about_->say(chart_->about(words));
    const bool as_table = tools_.desk.chart_as_table();
    staves_->Show(!as_table);
    table_->Show(as_table);
    table_->show(chart_->table(words));
    Layout();
    refresh_note();
}

void ChartPanel::refresh_note() {
    const auto& words = tools_.desk.words();
    ways_heading_->SetLabel(shown_in_label(chart_->ways_heading(words)));
    why_->say(chart_->why(words));
    ways_->show(chart_->ways(words));
    name_for_readers(ways_, chart_->ways_heading(words));
    table_->select(chart_->note().midi());
    show_drawing();
    Layout();
}

void ChartPanel::show_drawing() {
    const auto pictures = tools_.pictures();
    // The chart may be gone when the drawing is laid out anew: it takes a copy.
    const desk::NoteChart chart = *chart_;
    drawing_->show(
        [chart, pictures](units::Millimetres width) { return chart.picture(pictures, width).page; },
        tools_.desk.words().say(Sentence::chart_section_name),
        chart.picture(pictures, units::Millimetres(200.0)).content);
    bring_into_sight();
}

void ChartPanel::bring_into_sight() {
    for (const auto& item : drawing_->page().items) {
        const auto* const mark = std::get_if<canvas::Shape>(&item);
        if (mark == nullptr || mark->name != "column") continue;
        const int top = chart_scale.pixels(std::get<canvas::MoveTo>(mark->steps.at(0)).to.y);
        const int bottom = chart_scale.pixels(std::get<canvas::LineTo>(mark->steps.at(2)).to.y) + 2 * gap;
        int x = 0;
        int y = 0;
        staves_->CalcUnscrolledPosition(0, 0, &x, &y);
        const int height = staves_->GetClientSize().GetHeight();
        if (top < y)
            staves_->Scroll(0, top / 12);
        else if (bottom > y + height)
            staves_->Scroll(0, (std::max(0, bottom - height) + 11) / 12);
        return;
    }
}

void ChartPanel::find_typed() {
    const std::string problem = chart_->find(tools_.desk.words(), utf8(find_->GetValue()));
    problem_->say(problem);
    describe_for_readers(find_, problem);
    find_->SelectAll();
    refresh_note();
}

void ChartPanel::on_find_key(wxKeyEvent& event) {
    const int key = event.GetKeyCode();
    if (event.GetModifiers() == 0 && (key == WXK_UP || key == WXK_DOWN)) {
        chart_->step(key == WXK_UP ? 1 : -1);
        problem_->say({});
        refresh_note();
        return;
    }
    event.Skip();
}

void ChartPanel::on_click(wxMouseEvent& event) {
    const auto width = drawing_->page().size.width;
    const canvas::Point point{chart_scale.millimetres(event.GetX()), chart_scale.millimetres(event.GetY())};
    if (const auto note = chart_->note_at(tools_.pictures(), width, point)) {
        chart_->look_at(*note);
        refresh_note();
    }
}

}  // namespace lowledger::window
