#include "app/window/basis_panel.h"

#include <cmath>
#include <wx/sizer.h>

#include "app/desk/note_names.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "model/units/number_text.h"
#include "reports/words/certificate_words.h"
#include "reports/words/names.h"

namespace lowledger::window {
namespace {

std::string percent(double share) {
    return std::to_string(std::lround(100.0 * share)) + "\u00A0%";
}

desk::ListingCell cents(units::Cents value) {
    return {words::cents_text(value), value.value()};
}

}  // namespace

BasisPanel::BasisPanel(wxWindow* parent, const Tools& tools) : wxPanel(parent), tools_(tools) {
    const auto of_notes = _("What is believed of every note");
    const auto of_answer = _("What it was made with");
    auto* notes_heading = heading(this, utf8(of_notes));
    beliefs_ = new ListingView(this, tools.menus, utf8(of_notes));
    beliefs_->SetName("beliefs");
    auto* figures_heading = heading(this, utf8(of_answer));
    figures_ = new ListingView(this, tools.menus, utf8(of_answer));
    certificate_ = new Paragraph(this);
    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(notes_heading, wxSizerFlags().Expand().Border(wxALL, gap / 2));
    all->Add(beliefs_, wxSizerFlags(3).Expand());
    all->Add(figures_heading, wxSizerFlags().Expand().Border(wxALL, gap / 2));
    all->Add(figures_, wxSizerFlags(2).Expand());
    all->Add(certificate_, wxSizerFlags().Expand().Border(wxALL, gap / 2));
    SetSizer(all);
}

void BasisPanel::refresh() {
    if (!tools_.desk.answer().there()) return;
    beliefs_->show(beliefs());
    figures_->show(figures());
    const auto& desk = tools_.desk;
    certificate_->say(words::certificate_sentence({desk.words(), desk.kind(), desk::note_style(desk)},
                                                  *desk.answer().answer));
    Layout();
}

desk::Listing BasisPanel::beliefs() const {
    const auto& live = tools_.desk.answer();
    const auto style = desk::note_style(tools_.desk);
    desk::Listing listing;
    listing.columns = {{utf8(_("Note")), false, true}, {utf8(_("Way")), false, true},
                       {utf8(_("Read")), true, true},  {utf8(_("Mean")), true, true},
                       {utf8(_("Lean")), true, true},  {std::string("±"), true, true},
                       {utf8(_("Data")), true, true}};
    std::int64_t id = 0;
    for (const auto& note : live.answer->profile.notes) {
        if (!note.usual && note.takes == 0) continue;
        listing.rows.push_back(
            {id++,
             {{words::note_name_with_octave(note.note, style), static_cast<double>(note.note.midi())},
              words::fingering_label(live.inputs->kind, note.fingering),
              {std::to_string(note.takes), static_cast<double>(note.takes)},
              note.mean_of_takes ? cents(*note.mean_of_takes) : desk::ListingCell(""),
              cents(note.mean),
              {std::to_string(words::whole_cents(note.spread)), note.spread.value()},
              {percent(note.share_of_data), note.share_of_data}},
             note.takes == 0});
    }
    return listing;
}

desk::Listing BasisPanel::figures() const {
    const auto& answer = *tools_.desk.answer().answer;
    const auto& profile = answer.profile;
    const auto& constants = answer.settings.constants;
    desk::Listing listing;
    listing.columns = {{utf8(_("Figure"))}, {utf8(_("Value")), true, true}};
    const auto add = [&](const wxString& what, const std::string& value) {
        listing.rows.push_back({static_cast<std::int64_t>(listing.rows.size()), {utf8(what), value}, false});
    };
    add(_("Sheets used"), std::to_string(profile.sheets_used));
    add(_("Readings used"), std::to_string(profile.takes_used));
    if (profile.sheets_of_other_horns > 0)
        add(_("Sheets on the student's other horns"), std::to_string(profile.sheets_of_other_horns));
    if (profile.sheets_of_other_players > 0)
        add(_("Sheets of the horn's other players"), std::to_string(profile.sheets_of_other_players));
    add(_("Sheets not used: cold, mute or empty"), std::to_string(profile.not_used.size()));
    add(_("Of the horn's lean the player takes back"), percent(profile.correction.part) + " (" +
                                                           percent(profile.correction.low) + " – " +
                                                           percent(profile.correction.high) + ")");
    add(_("A flat note counts, against a sharp one"), units::decimal_text(constants.flat_weight, 1));
    add(_("Worth moving, when the mean falls by, cents"),
        units::decimal_text(constants.worth_moving.value(), 1));
    add(_("… or when it is better with a chance of"), percent(constants.chance_of_better));
    add(_("… and each slide moved, with a chance of"), percent(constants.chance_of_each));
    add(_("Chance that these settings are better"), percent(answer.settings.chance_of_better));
    add(_("Steps, mm"), units::decimal_text(constants.step.value(), 1));
    for (const auto& slide : profile.slides) {
        const auto* of_kind = tools_.desk.kind().slide(slide.slide);
        add(shown((of_kind != nullptr ? of_kind->name : slide.slide) + ": ") +
                _("a pull acts, of what its length says"),
            percent(slide.bore) + " ± " + percent(slide.bore_spread));
    }
    return listing;
}

}  // namespace lowledger::window
