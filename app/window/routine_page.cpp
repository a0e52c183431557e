#include "app/window/routine_page.h"

#include <wx/button.h>
#include <wx/sizer.h>

#include "app/desk/routine_lists.h"
#include "app/desk/tables.h"
#include "app/window/errors.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "model/studio/questions.h"
#include "model/units/refusal.h"
#include "reports/engraving/music_line.h"
#include "reports/pages/routine_music.h"
#include "reports/words/routine_words.h"

namespace lowledger::window {
namespace {

using words::Sentence;

std::optional<studio::Routine> open_routine(const desk::Desk& desk) {
    if (!desk.has_studio() || !desk.view().routine) return std::nullopt;
    return desk.file().routine(*desk.view().routine);
}

std::string text_of(const words::Words& words, const studio::Routine& routine) {
    std::string horns;
    for (const auto& horn : routine.horns)
        horns += (horns.empty() ? "" : ", ") + horn;
    if (horns.empty()) horns = words.say(Sentence::routine_all_horns);
    std::string text = routine.aim + "\n" +
                       words.say(Sentence::routine_for,
                                 {{"levels", desk::levels_text(words, routine.levels)}, {"horns", horns}}) +
                       "\n\n";
    int number = 0;
    for (const auto& step : routine.steps)
        text += words.say(Sentence::routine_sheet_number, {{"number", std::to_string(++number)}}) + " " +
                step + "\n";
    text += words::how_much(words, routine, {});
    if (!routine.remarks.empty()) text += "\n\n" + routine.remarks;
    return text;
}

wxSizer* buttons(wxWindow* parent, Menus& menus,
                 const std::vector<std::pair<std::string_view, wxString>>& offers) {
    auto* row = new wxBoxSizer(wxHORIZONTAL);
    for (const auto& [action, label] : offers) {
        auto* button = new wxButton(parent, wxID_ANY, label);
        button->Bind(wxEVT_BUTTON, [&menus, action = action](wxCommandEvent&) { menus.run(action); });
        row->Add(button, wxSizerFlags().Border(wxRIGHT, gap));
    }
    return row;
}

}  // namespace

RoutinePage::RoutinePage(wxWindow* parent, const Tools& tools) : PlacePage(parent), tools_(tools) {
    const auto& words = tools.desk.words();
    title_ = new wxStaticText(this, wxID_ANY, {});
    title_->SetFont(title_->GetFont().Scaled(1.6F).Bold());
    text_ = new Paragraph(this);
    music_ = new Drawing(this, tools.faces);
    auto* who = heading(this, words.say(Sentence::routine_who_heading));
    who_ = new ListingView(this, tools.menus, words.say(Sentence::routine_who_heading));
    auto* all = new wxBoxSizer(wxVERTICAL);
    const auto flags = wxSizerFlags().Expand().Border(wxALL, gap);
    all->Add(title_, flags);
    all->Add(text_, flags);
    all->Add(music_, flags);
    all->Add(buttons(this, tools.menus,
                     {{"routine.give", _("&Give routine…")}, {"routine.change", _("&Change routine…")}}),
             flags);
    all->Add(who, flags);
    all->Add(who_, wxSizerFlags(1).Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, gap));
    SetSizer(all);
    who_->on_opened([this](std::int64_t student) {
        told(this, [&] {
            desk::View view = tools_.desk.view();
            view.place = desk::Place::students;
            view.student = studio::StudentId{student};
            view.horn.reset();
            view.section = desk::Section::routines;
            tools_.desk.go(view);
        });
    });
}

bool RoutinePage::has_subject() const {
    return open_routine(tools_.desk).has_value();
}

void RoutinePage::refresh(const desk::News& news) {
    const auto routine = open_routine(tools_.desk);
    if (!routine || (!news.records && !news.view)) return;
    const auto& words = tools_.desk.words();
    title_->SetLabelText(shown(routine->title));
    text_->say(text_of(words, *routine));
    if (routine->music.empty()) {
        music_->show_nothing();
    } else {
        music_->show(
            [this, routine = *routine](units::Millimetres width) {
                canvas::Page page;
                page.size.width = width;
                try {
                    const auto line = *pages::routine_music(routine);
                    const auto wanted = std::max(width, engraving::narrowest_width(tools_.engraver, line));
                    page.size.height = engraving::draw_music(page, tools_.engraver, line, {}, wanted);
                } catch (const units::Refusal&) {
                    page.size.height = units::Millimetres(1.0);
                }
                return page;
            },
            words.say(Sentence::routine_music_name), routine->music);
    }
    who_->show(desk::who_has_listing(tools_.desk, routine->id));
    Layout();
}

RoutinePanel::RoutinePanel(wxWindow* parent, const Tools& tools) : wxPanel(parent), tools_(tools) {
    const auto add = [&](wxSizer* column, desk::Table table, int share) {
        column->Add(heading(this, tools.desk.words().say(desk::entry_of(table).name)),
                    wxSizerFlags().Expand().Border(wxLEFT | wxRIGHT | wxTOP, gap));
        auto* const panel = new TablePanel(this, tools, table);
        column->Add(panel, wxSizerFlags(share).Expand());
        return panel;
    };
    auto* all = new wxBoxSizer(wxVERTICAL);
    given_ = add(all, desk::Table::given, 1);
    auto* below = new wxBoxSizer(wxHORIZONTAL);
    auto* left = new wxBoxSizer(wxVERTICAL);
    practice_ = add(left, desk::Table::practice, 1);
    auto* right = new wxBoxSizer(wxVERTICAL);
    pieces_ = add(right, desk::Table::pieces, 1);
    below->Add(left, wxSizerFlags(3).Expand());
    below->Add(right, wxSizerFlags(4).Expand());
    all->Add(below, wxSizerFlags(1).Expand());
    SetSizer(all);
}

void RoutinePanel::refresh() {
    for (auto* const panel : {given_, practice_, pieces_})
        panel->refresh();
}

}  // namespace lowledger::window
