#include "app/window/hand_panel.h"

#include <algorithm>
#include <wx/button.h>
#include <wx/sizer.h>

#include "app/desk/note_names.h"
#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/form.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "model/units/number_text.h"
#include "reports/words/names.h"

namespace lowledger::window {
namespace {

using units::Millimetres;
using words::Sentence;

constexpr int number_width = 70;
constexpr double heaviest = 100.0;
constexpr double longest_step = 50.0;

}  // namespace

HandPanel::HandPanel(wxWindow* parent, desk::Desk& desk)
    : wxScrolledWindow(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL), desk_(desk) {
    SetScrollRate(0, 12);
    with_steady_bars(this);
}

void HandPanel::refresh() {
    if (!desk_.student() || !desk_.horn()) return;
    const std::pair subject{desk_.student()->id, desk_.horn()->id};
    if (shown_ != subject) {
        shown_ = subject;
        make_fields();
    }
    show_notes();
    show_weights();
}

wxTextCtrl* HandPanel::make_field(const std::string& name, const std::string& hint) {
    auto* field = new wxTextCtrl(this, wxID_ANY, {}, wxDefaultPosition, wxSize(number_width, -1), wxTE_RIGHT);
    field->SetHint(shown(hint));
    field->SetName(shown("hand " + name));
    name_for_readers(field, name);
    return field;
}

void HandPanel::make_fields() {
    DestroyChildren();
    lines_.clear();
    notes_.clear();
    auto* all = new wxBoxSizer(wxVERTICAL);
    problem_ = new Paragraph(this);
    problem_->SetFont(problem_->GetFont().Bold());
    all->Add(problem_, wxSizerFlags().Expand().Border(wxALL, gap / 2));
    all->Add(make_slides(), wxSizerFlags().Border(wxALL, gap));
    all->Add(make_weights(), wxSizerFlags().Expand().Border(wxALL, gap));
    auto* away = new wxButton(this, wxID_ANY, _("Take m&y hand away"));
    away->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) {
        told(this, [this] { desk_.set_hand({}); });
        CallAfter([this] {
            make_fields();
            refresh();
        });
    });
    all->Add(away, wxSizerFlags().Border(wxALL, gap));
    SetSizer(all);
    FitInside();
    Layout();
}

wxSizer* HandPanel::make_slides() {
    const auto& hand = desk_.hand();
    auto* grid = new wxFlexGridSizer(4, wxSize(gap + 2, gap / 2));
    for (const auto& title : {wxString(), wxString(), _("least, mm"), _("travel, mm")})
        grid->Add(new wxStaticText(this, wxID_ANY, title));
    const auto limit = [&](wxTextCtrl& field, const std::map<std::string, Millimetres>& said,
                           const std::string& slide) {
        if (const auto found = said.find(slide); found != said.end())
            field.ChangeValue(shown(short_decimal(found->second.value())));
        field.Bind(wxEVT_TEXT, [this](wxCommandEvent&) { change(); });
    };
    for (const auto& slide : desk_.horn()->slides) {
        const auto* of_kind = desk_.kind().slide(slide.slide);
        Line line{slide.slide, of_kind != nullptr ? of_kind->name : slide.slide};
        grid->Add(new wxStaticText(this, wxID_ANY, shown_in_label(line.name)),
                  wxSizerFlags().CentreVertical());
        line.stays = new wxCheckBox(this, wxID_ANY, _("stays"));
        line.stays->SetValue(slide.stuck || hand.fixed.contains(slide.slide));
        line.stays->Enable(!slide.stuck);
        name_for_readers(line.stays, line.name + ", " + utf8(_("stays")));
        line.stays->SetName(shown("stays " + slide.slide));
        line.stays->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent&) { change(); });
        grid->Add(line.stays, wxSizerFlags().CentreVertical());
        line.least = make_field(line.name + ", " + utf8(_("least, mm")), short_decimal(slide.least.value()));
        line.travel =
            make_field(line.name + ", " + utf8(_("travel, mm")), short_decimal(slide.travel.value()));
        line.travel->SetName(shown("hand travel " + slide.slide));
        limit(*line.least, hand.least, slide.slide);
        limit(*line.travel, hand.travel, slide.slide);
        grid->Add(line.least);
        grid->Add(line.travel);
        lines_.push_back(line);
    }
    grid->Add(new wxStaticText(this, wxID_ANY, _("Steps, mm:")), wxSizerFlags().CentreVertical());
    grid->AddSpacer(0);
    step_ = make_field(utf8(_("Steps, mm")), utf8(_("usual")));
    if (hand.step) step_->ChangeValue(shown(short_decimal(hand.step->value())));
    step_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { change(); });
    grid->Add(step_);
    grid->AddSpacer(0);
    return grid;
}

wxSizer* HandPanel::make_weights() {
    auto* all = new wxBoxSizer(wxVERTICAL);
    band_note_ = new wxCheckBox(this, wxID_ANY, _("The &band's note reads zero"));
    band_note_->SetValue(desk_.hand().band_note_at_zero);
    band_note_->Bind(wxEVT_CHECKBOX, [this](wxCommandEvent&) { change(); });
    all->Add(band_note_, wxSizerFlags().Border(wxBOTTOM, gap));
    auto* line = new wxBoxSizer(wxHORIZONTAL);
    line->Add(new wxStaticText(this, wxID_ANY, _("Not&e:")), wxSizerFlags().CentreVertical());
    note_ = new wxChoice(this, wxID_ANY);
    note_->SetName("hand note");
    name_for_readers(note_, utf8(_("Note")));
    line->Add(note_, wxSizerFlags().CentreVertical().Border(wxLEFT, gap / 2));
    line->Add(new wxStaticText(this, wxID_ANY, _("&Weight:")),
              wxSizerFlags().CentreVertical().Border(wxLEFT, 2 * gap));
    weight_ = make_field(utf8(_("Weight of the note")), utf8(_("usual")));
    weight_->SetName("hand weight");
    line->Add(weight_, wxSizerFlags().CentreVertical().Border(wxLEFT, gap / 2));
    all->Add(line);
    weights_ = new Paragraph(this);
    all->Add(weights_, wxSizerFlags().Expand().Border(wxTOP, gap));
    note_->Bind(wxEVT_CHOICE, [this](wxCommandEvent&) { show_weights(); });
    weight_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { change_weight(); });
    return all;
}

void HandPanel::show_notes() {
    const auto& live = desk_.answer();
    if (!live.there()) return;
    std::vector<units::Pitch> notes;
    wxArrayString names;
    for (const auto& note : live.answer->settings.notes) {
        notes.push_back(note.note);
        names.Add(shown(words::note_name_with_octave(note.note, desk::note_style(desk_))));
    }
    if (notes == notes_ && note_->GetStrings() == names) return;
    notes_ = notes;
    note_->Set(names);
    if (!notes_.empty()) note_->SetSelection(0);
}

void HandPanel::show_weights() {
    const auto& weights = desk_.hand().weights;
    std::string said;
    for (const auto& [note, weight] : weights)
        said += (said.empty() ? "" : ", ") + words::note_name_with_octave(note, desk::note_style(desk_)) +
                ": " + short_decimal(weight);
    weights_->say(said);
    const int at = note_->GetSelection();
    if (at == wxNOT_FOUND || weight_->HasFocus()) return;
    const auto found = weights.find(notes_.at(static_cast<std::size_t>(at)));
    weight_->ChangeValue(found == weights.end() ? wxString() : shown(short_decimal(found->second)));
}

std::optional<tuning::TeacherHand> HandPanel::typed() {
    tuning::TeacherHand hand;
    hand.weights = desk_.hand().weights;
    hand.band_note_at_zero = band_note_->GetValue();
    const auto& words = desk_.words();
    for (std::size_t i = 0; i < lines_.size(); ++i) {
        const auto& line = lines_[i];
        const auto& own = desk_.horn()->slides.at(i);
        if (line.stays->GetValue() && line.stays->IsEnabled()) hand.fixed.insert(line.slide);
        const std::string least = trimmed(*line.least);
        const std::string travel = trimmed(*line.travel);
        const auto low = least.empty() ? own.least.value() : units::parse_decimal(least);
        const auto high = travel.empty() ? own.travel.value() : units::parse_decimal(travel);
        if (!low || *low < 0.0) {
            problem_->say(
                words.say(Sentence::slide_length_refused, {{"typed", least}, {"slide", line.name}}));
            return std::nullopt;
        }
        if (!high || *high <= *low) {
            problem_->say(
                words.say(Sentence::slide_travel_refused, {{"typed", travel}, {"slide", line.name}}));
            return std::nullopt;
        }
        if (!least.empty()) hand.least[line.slide] = Millimetres(*low);
        if (!travel.empty()) hand.travel[line.slide] = Millimetres(*high);
    }
    const std::string step = trimmed(*step_);
    const auto size = units::parse_decimal(step);
    if (!step.empty() && (!size || *size < 0.0 || *size > longest_step)) {
        problem_->say(
            words.say(Sentence::hand_step_refused, {{"typed", step}, {"most", short_decimal(longest_step)}}));
        return std::nullopt;
    }
    if (!step.empty()) hand.step = Millimetres(*size);
    problem_->say({});
    return hand;
}

void HandPanel::change() {
    if (const auto hand = typed()) told(this, [&] { desk_.set_hand(*hand); });
    Layout();
}

void HandPanel::change_weight() {
    const int at = note_->GetSelection();
    if (at == wxNOT_FOUND) return;
    const auto note = notes_.at(static_cast<std::size_t>(at));
    const std::string typed = trimmed(*weight_);
    const auto weight = units::parse_decimal(typed);
    if (!typed.empty() && (!weight || *weight < 0.0 || *weight > heaviest)) {
        problem_->say(desk_.words().say(Sentence::hand_weight_refused,
                                        {{"typed", typed}, {"most", short_decimal(heaviest)}}));
        Layout();
        return;
    }
    problem_->say({});
    auto hand = desk_.hand();
    hand.weights.erase(note);
    if (weight) hand.weights[note] = *weight;
    told(this, [&] { desk_.set_hand(hand); });
    show_weights();
}

}  // namespace lowledger::window
