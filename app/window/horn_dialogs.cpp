#include <algorithm>
#include <map>
#include <wx/sizer.h>

#include "app/window/access.h"
#include "app/window/dialogs.h"
#include "app/window/form.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "model/studio/kind_of.h"
#include "model/studio/questions.h"
#include "model/studio/tuner_number.h"
#include "model/units/number_text.h"
#include "reports/words/names.h"

namespace lowledger::window {
namespace {

using units::Millimetres;
using words::Sentence;

/// A row of fields for one slide: least, travel, stuck.
struct SlideFields {
    std::string slide;
    std::string name;
    wxTextCtrl* least = nullptr;
    wxTextCtrl* travel = nullptr;
    wxCheckBox* stuck = nullptr;

    [[nodiscard]] std::optional<Form::Problem> problem(const words::Words& words) const {
        const auto low = units::parse_decimal(trimmed(*least));
        if (!low || *low < 0.0)
            return Form::Problem{least, words.say(Sentence::slide_length_refused,
                                                  {{"typed", trimmed(*least)}, {"slide", name}})};
        const auto high = units::parse_decimal(trimmed(*travel));
        if (!high || *high <= *low || *high > 1000.0)
            return Form::Problem{travel, words.say(Sentence::slide_travel_refused,
                                                   {{"typed", trimmed(*travel)}, {"slide", name}})};
        return std::nullopt;
    }
    [[nodiscard]] studio::HornSlide value() const {
        return {slide, Millimetres(units::parse_decimal(trimmed(*least)).value_or(0.0)),
                Millimetres(units::parse_decimal(trimmed(*travel)).value_or(0.0)), stuck->GetValue()};
    }
};

/// The slides of a horn, a line each, made anew when another kind is chosen.
class SlidesBlock : public wxPanel {
  public:
    explicit SlidesBlock(wxWindow* parent) : wxPanel(parent) {}

    void show(const horns::HornKind& kind, const std::vector<studio::HornSlide>& slides) {
        DestroyChildren();
        fields_.clear();
        auto* grid = new wxFlexGridSizer(4, wxSize(10, 4));
        for (const auto& title : {wxString(), _("least, mm"), _("travel, mm"), wxString()})
            grid->Add(new wxStaticText(this, wxID_ANY, title));
        for (const auto& slide : slides) {
            const auto* of_kind = kind.slide(slide.slide);
            SlideFields made;
            made.slide = slide.slide;
            made.name = of_kind != nullptr ? of_kind->name : slide.slide;
            grid->Add(new wxStaticText(this, wxID_ANY, shown_in_label(made.name)),
                      wxSizerFlags().CentreVertical());
            const auto field = [&](Millimetres value, const wxString& what) {
                auto* text = new wxTextCtrl(this, wxID_ANY, shown(short_decimal(value.value())),
                                            wxDefaultPosition, wxSize(70, -1), wxTE_RIGHT);
                name_for_readers(text, made.name + ", " + utf8(what));
                grid->Add(text);
                return text;
            };
            made.least = field(slide.least, _("least, mm"));
            made.travel = field(slide.travel, _("travel, mm"));
            made.stuck = new wxCheckBox(this, wxID_ANY, _("stuck"));
            made.stuck->SetValue(slide.stuck);
            name_for_readers(made.stuck, made.name + ", " + utf8(_("stuck")));
            grid->Add(made.stuck, wxSizerFlags().CentreVertical());
            fields_.push_back(made);
        }
        SetSizerAndFit(grid);
    }
    [[nodiscard]] const std::vector<SlideFields>& fields() const { return fields_; }

  private:
    std::vector<SlideFields> fields_;
};

}  // namespace

std::optional<studio::Horn> ask_horn(wxWindow* parent, const words::Words& words,
                                     const std::vector<studio::Student>& students,
                                     const std::vector<horns::HornKind>& kinds, const studio::Horn& start) {
    const bool is_new = !start.id.filed();
    Form form(parent, is_new ? _("Add horn") : _("Change horn"), is_new ? _("&Add") : _("&Keep"));
    horns::HornKind kind = studio::kind_of(start);
    wxChoice* kind_choice = nullptr;
    if (is_new) {
        std::vector<std::string> names;
        for (const auto& one : kinds)
            names.push_back(words::kind_name(one));
        kind_choice = form.choice(_("&Kind:"), names, 0);
    } else {
        form.row(_("Kind:"), [&](wxWindow* body) {
            return new wxStaticText(body, wxID_ANY, shown_in_label(words::kind_name(kind)));
        });
    }
    auto* mark = form.text(_("&Mark:"), start.mark, _("as painted on horn and case"));
    std::vector<std::string> owners{words.say(Sentence::horn_of_school)};
    int owner_now = 0;
    for (const auto& student : students) {
        if (start.owner == student.id) owner_now = static_cast<int>(owners.size());
        owners.push_back(student.name);
    }
    auto* owner = form.choice(_("&Owner:"), owners, owner_now);
    auto* maker = form.text(_("Ma&ker and model:"), start.maker_and_model);
    auto* serial = form.text(_("Serial &number:"), start.serial_number);
    SlidesBlock* slides = nullptr;
    form.row(_("Slides:"), [&](wxWindow* body) {
        slides = new SlidesBlock(body);
        slides->show(kind, start.slides);
        return slides;
    });
    auto* remarks = form.lines(_("&Remarks:"), start.remarks);
    if (kind_choice != nullptr) {
        kind_choice->Bind(wxEVT_CHOICE, [&](wxCommandEvent& event) {
            kind = kinds.at(static_cast<std::size_t>(event.GetSelection()));
            slides->show(kind, studio::horn_of(kind).slides);
            form.GetSizer()->SetSizeHints(&form);
        });
    }
    const bool agreed = form.ask([&]() -> std::optional<Form::Problem> {
        if (trimmed(*mark).empty()) return Form::Problem{mark, words.say(Sentence::horn_needs_mark)};
        for (const auto& slide : slides->fields())
            if (const auto problem = slide.problem(words)) return problem;
        return std::nullopt;
    });
    if (!agreed) return std::nullopt;
    studio::Horn horn = is_new ? studio::horn_of(kind) : start;
    horn.mark = trimmed(*mark);
    horn.owner.reset();
    if (owner->GetSelection() > 0)
        horn.owner = students.at(static_cast<std::size_t>(owner->GetSelection()) - 1).id;
    horn.maker_and_model = trimmed(*maker);
    horn.serial_number = trimmed(*serial);
    horn.remarks = utf8(remarks->GetValue());
    horn.slides.clear();
    for (const auto& slide : slides->fields())
        horn.slides.push_back(slide.value());
    return horn;
}

std::optional<desk::MeasuredSlides> ask_measured(wxWindow* parent, const words::Words& words,
                                                 const studio::Horn& horn,
                                                 const desk::MeasuredSlides& start) {
    Form form(parent, _("Measure slides"), _("&Keep"));
    const auto kind = studio::kind_of(horn);
    form.note(shown(words.say(Sentence::measure_note, {{"mark", horn.mark}})));
    auto* on = form.date(_("&Date:"), start.on);
    std::map<std::string, wxTextCtrl*> fields;
    for (const auto& slide : horn.slides) {
        const auto known = start.positions.find(slide.slide);
        const auto* of_kind = kind.slide(slide.slide);
        fields[slide.slide] =
            form.text(shown_in_label(of_kind != nullptr ? of_kind->name : slide.slide) + ", mm:",
                      known == start.positions.end() ? std::string() : short_decimal(known->second.value()),
                      _("not measured"));
    }
    desk::MeasuredSlides measured{start.on, {}};
    const bool agreed = form.ask([&]() -> std::optional<Form::Problem> {
        measured.positions.clear();
        for (const auto& slide : horn.slides) {
            wxTextCtrl* field = fields.at(slide.slide);
            const std::string typed = trimmed(*field);
            if (typed.empty()) continue;
            const auto position = studio::read_slide_position(typed, slide.travel);
            if (!position || *position > slide.travel)
                return Form::Problem{field, words.say(Sentence::head_slide_refused,
                                                      {{"typed", typed},
                                                       {"slide", kind.slide(slide.slide)->name},
                                                       {"travel", short_decimal(slide.travel.value())}})};
            measured.positions[slide.slide] = *position;
        }
        return std::nullopt;
    });
    if (!agreed) return std::nullopt;
    measured.on = date_of(*on);
    return measured;
}

}  // namespace lowledger::window
