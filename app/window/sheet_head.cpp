#include "app/window/sheet_head.h"

#include <wx/dateevt.h>
#include <wx/wrapsizer.h>

#include "app/window/access.h"
#include "app/window/errors.h"
#include "app/window/form.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "model/studio/tuner_number.h"
#include "model/units/number_text.h"

namespace lowledger::window {
namespace {

using words::Sentence;

// What a room and a tuner can be; beyond, it is a slip of the fingers.
constexpr units::Celsius coldest{-10.0};
constexpr units::Celsius hottest{45.0};
constexpr units::Hertz lowest_a4{400.0};
constexpr units::Hertz highest_a4{480.0};

}  // namespace

SheetHead::SheetHead(wxWindow* parent, desk::Desk& desk) : wxPanel(parent), desk_(desk) {
    auto* first = new wxBoxSizer(wxHORIZONTAL);
    first->Add(new wxStaticText(this, wxID_ANY, _("&Date:")), wxSizerFlags().CentreVertical());
    date_ = new wxDatePickerCtrl(this, wxID_ANY, wxDefaultDateTime, wxDefaultPosition, wxDefaultSize,
                                 wxDP_DROPDOWN | wxDP_SHOWCENTURY);
    name_with_parts(date_, utf8(_("Date")));
    first->Add(date_, wxSizerFlags().CentreVertical().Border(wxLEFT, gap / 2));
    const auto check = [&](const wxString& label, bool studio::TuningSheet::*member) {
        auto* box = new wxCheckBox(this, wxID_ANY, label);
        first->Add(box, wxSizerFlags().CentreVertical().Border(wxLEFT, 2 * gap));
        box->Bind(wxEVT_CHECKBOX, [this, member](wxCommandEvent& event) {
            change([&](studio::TuningSheet& sheet) { sheet.*member = event.IsChecked(); });
        });
        return box;
    };
    warm_ = check(_("Played &warm"), &studio::TuningSheet::warm);
    seen_ = check(_("&Looked at the tuner"), &studio::TuningSheet::tuner_seen);
    mute_ = check(_("With a &mute"), &studio::TuningSheet::mute);

    auto* second = new wxBoxSizer(wxHORIZONTAL);
    mouthpiece_ = labelled(*second, _("Mouth&piece:"), 140, [this](const wxString& text, CommitField::By) {
        change([&](studio::TuningSheet& sheet) { sheet.mouthpiece = utf8(text.Strip(wxString::both)); });
    });
    mouthpiece_->SetHint(_("the usual one"));
    room_ = labelled(
        *second, _("&Room:"), 60, [this](const wxString& text, CommitField::By) { commit_room(text); }, "°C");
    room_->SetHint(_("?"));
    a4_ = labelled(
        *second, _("T&uner's A4:"), 60, [this](const wxString& text, CommitField::By) { commit_a4(text); },
        "Hz");

    slides_ = new wxPanel(this);
    problem_ = new wxStaticText(this, wxID_ANY, {});
    problem_->SetFont(problem_->GetFont().Bold());
    problem_->Hide();

    auto* all = new wxBoxSizer(wxVERTICAL);
    all->Add(first, wxSizerFlags().Expand().Border(wxBOTTOM, gap));
    all->Add(second, wxSizerFlags().Expand().Border(wxBOTTOM, gap));
    all->Add(slides_, wxSizerFlags().Expand());
    all->Add(problem_, wxSizerFlags().Expand().Border(wxTOP, gap));
    SetSizer(all);

    date_->Bind(wxEVT_DATE_CHANGED, [this](wxDateEvent&) {
        change([&](studio::TuningSheet& sheet) { sheet.on = date_of(*date_); });
    });
}

CommitField* SheetHead::labelled(wxSizer& line, const wxString& label, int width, CommitField::Commit commit,
                                 const wxString& unit) {
    const int before = line.IsEmpty() ? 0 : 2 * gap;
    auto* text = new wxStaticText(this, wxID_ANY, label);
    auto* field = new CommitField(this, width, std::move(commit));
    name_for_readers(field, name_of_label(label));
    line.Add(text, wxSizerFlags().CentreVertical().Border(wxLEFT, before));
    line.Add(field, wxSizerFlags().CentreVertical().Border(wxLEFT, gap / 2));
    if (!unit.empty())
        line.Add(new wxStaticText(this, wxID_ANY, unit),
                 wxSizerFlags().CentreVertical().Border(wxLEFT, gap / 2));
    return field;
}

void SheetHead::make_slide_fields() {
    slides_->DestroyChildren();
    slide_fields_.clear();
    auto* line = new wxWrapSizer(wxHORIZONTAL, 0);
    line->Add(new wxStaticText(slides_, wxID_ANY, _("Slides out, mm:")), wxSizerFlags().CentreVertical());
    for (const auto& slide : desk_.kind().slides) {
        auto* cell = new wxBoxSizer(wxHORIZONTAL);
        cell->Add(new wxStaticText(slides_, wxID_ANY, shown_in_label(slide.id) + ":"),
                  wxSizerFlags().CentreVertical());
        auto* field = new CommitField(
            slides_, 52,
            [this, id = slide.id](const wxString& text, CommitField::By) { commit_slide(id, text); },
            wxTE_RIGHT);
        field->SetHint(_("?"));
        field->SetToolTip(
            _("Millimetres of bare tube, or \"in\", or \"half\" of the travel. Leave it empty if not "
              "measured."));
        name_for_readers(field, slide.name + ", mm");
        field->SetName(shown("slide " + slide.id));
        cell->Add(field, wxSizerFlags().CentreVertical().Border(wxLEFT, gap / 2));
        line->Add(cell, wxSizerFlags().CentreVertical().Border(wxLEFT, gap + 4));
        slide_fields_[slide.id] = field;
    }
    slides_->SetSizer(line);
    slides_of_ = desk_.kind().id;
}

void SheetHead::refresh() {
    if (desk_.entry() == nullptr) return;
    if (slides_of_ != desk_.kind().id) make_slide_fields();
    const auto& sheet = desk_.entry()->sheet();
    date_->SetValue(wx_date(sheet.on));
    warm_->SetValue(sheet.warm);
    seen_->SetValue(sheet.tuner_seen);
    mute_->SetValue(sheet.mute);
    mouthpiece_->set_counted(shown(sheet.mouthpiece));
    room_->set_counted(sheet.room ? shown(short_decimal(sheet.room->value())) : wxString());
    a4_->set_counted(shown(short_decimal(sheet.tuner_a4.value())));
    for (auto& [slide, field] : slide_fields_) {
        const auto found = sheet.positions.find(slide);
        field->set_counted(found == sheet.positions.end() ? wxString()
                                                          : shown(short_decimal(found->second.value())));
    }
    for (wxWindow* control :
         std::initializer_list<wxWindow*>{date_, warm_, seen_, mute_, mouthpiece_, room_, a4_, slides_})
        control->Enable(desk_.may_write());
    if (problem_->IsShown()) {
        problem_->Hide();
        GetParent()->Layout();
    }
}

void SheetHead::leave() {
    for (auto* field : {mouthpiece_, room_, a4_})
        if (field->HasFocus()) field->leave();
    for (auto& [slide, field] : slide_fields_)
        if (field->HasFocus()) field->leave();
}

void SheetHead::change(const std::function<void(studio::TuningSheet&)>& change) {
    if (desk_.entry() == nullptr || !desk_.may_write()) return;
    auto sheet = desk_.entry()->sheet();
    change(sheet);
    told(this, [&] { desk_.set_head(sheet); });
}

void SheetHead::refuse(CommitField& field, const std::string& sentence) {
    describe_for_readers(&field, sentence);
    problem_->SetLabelText(shown(sentence));
    problem_->Show();
    problem_->Wrap(GetClientSize().GetWidth());
    GetParent()->Layout();
}

void SheetHead::commit_room(const wxString& text) {
    const auto typed = utf8(text);
    if (text.Strip(wxString::both).empty()) {
        change([](studio::TuningSheet& sheet) { sheet.room.reset(); });
        return;
    }
    const auto degrees = units::parse_decimal(typed);
    if (!degrees || units::Celsius(*degrees) < coldest || units::Celsius(*degrees) > hottest) {
        refuse(*room_, desk_.words().say(Sentence::head_room_refused, {{"typed", typed}}));
        return;
    }
    change([&](studio::TuningSheet& sheet) { sheet.room = units::Celsius(*degrees); });
}

void SheetHead::commit_a4(const wxString& text) {
    const auto typed = utf8(text);
    const auto hertz = units::parse_decimal(typed);
    if (!hertz || units::Hertz(*hertz) < lowest_a4 || units::Hertz(*hertz) > highest_a4) {
        refuse(*a4_, desk_.words().say(Sentence::head_a4_refused, {{"typed", typed}}));
        return;
    }
    change([&](studio::TuningSheet& sheet) { sheet.tuner_a4 = units::Hertz(*hertz); });
}

units::Millimetres SheetHead::travel_of(const std::string& slide) const {
    for (const auto& of_horn : desk_.horn()->slides)
        if (of_horn.slide == slide) return of_horn.travel;
    return desk_.kind().slide(slide)->travel;
}

void SheetHead::commit_slide(const std::string& slide, const wxString& text) {
    const auto typed = utf8(text);
    if (text.Strip(wxString::both).empty()) {
        change([&](studio::TuningSheet& sheet) { sheet.positions.erase(slide); });
        return;
    }
    const auto travel = travel_of(slide);
    const auto position = studio::read_slide_position(typed, travel);
    if (!position || *position > travel) {
        refuse(*slide_fields_.at(slide),
               desk_.words().say(Sentence::head_slide_refused, {{"typed", typed},
                                                                {"slide", desk_.kind().slide(slide)->name},
                                                                {"travel", short_decimal(travel.value())}}));
        return;
    }
    change([&](studio::TuningSheet& sheet) { sheet.positions[slide] = *position; });
}

}  // namespace lowledger::window
