#include <map>
#include <wx/sizer.h>

#include "app/desk/kind_list.h"
#include "app/window/dialogs.h"
#include "app/window/form.h"
#include "app/window/kind_picker.h"
#include "app/window/layout.h"
#include "app/window/paragraph.h"
#include "app/window/slides_block.h"
#include "app/window/text.h"
#include "model/studio/kind_of.h"
#include "model/studio/questions.h"
#include "model/studio/tuner_number.h"
#include "reports/words/names.h"

namespace lowledger::window {
namespace {

using words::Sentence;

/// What is asked of any horn besides its kind.
class HornFields {
  public:
    HornFields(Form& form, const words::Words& words, const std::vector<studio::Student>& students,
               const studio::Horn& start, bool positions)
        : words_(words), students_(students) {
        mark_ = form.text(_("&Mark:"), start.mark, _("as painted on horn and case"));
        std::vector<std::string> owners{words.say(Sentence::horn_of_school)};
        int owner_now = 0;
        for (const auto& student : students) {
            if (start.owner == student.id) owner_now = static_cast<int>(owners.size());
            owners.push_back(student.name);
        }
        owner_ = form.choice(_("&Owner:"), owners, owner_now);
        maker_ = form.text(_("Ma&ker and model:"), start.maker_and_model);
        serial_ = form.text(_("Serial &number:"), start.serial_number);
        form.row(_("Slides:"), [&](wxWindow* body) {
            slides_ = new SlidesBlock(body, positions);
            slides_->show(studio::kind_of(start), start.slides);
            return slides_;
        });
        form.note(shown(words.say(positions ? Sentence::horn_defaults_note : Sentence::horn_defaults_short)));
        remarks_ = form.lines(_("&Remarks:"), start.remarks);
    }

    [[nodiscard]] SlidesBlock& slides() { return *slides_; }
    void focus() { mark_->SetFocus(); }

    [[nodiscard]] std::optional<Form::Problem> problem() const {
        if (trimmed(*mark_).empty()) return Form::Problem{mark_, words_.say(Sentence::horn_needs_mark)};
        return slides_->problem(words_);
    }

    [[nodiscard]] studio::Horn filled_in(studio::Horn horn) const {
        horn.mark = trimmed(*mark_);
        horn.owner.reset();
        if (owner_->GetSelection() > 0)
            horn.owner = students_.at(static_cast<std::size_t>(owner_->GetSelection()) - 1).id;
        horn.maker_and_model = trimmed(*maker_);
        horn.serial_number = trimmed(*serial_);
        horn.remarks = utf8(remarks_->GetValue());
        horn.slides = slides_->slides();
        return horn;
    }

  private:
    const words::Words& words_;
    const std::vector<studio::Student>& students_;
    wxTextCtrl* mark_ = nullptr;
    wxChoice* owner_ = nullptr;
    wxTextCtrl* maker_ = nullptr;
    wxTextCtrl* serial_ = nullptr;
    SlidesBlock* slides_ = nullptr;
    wxTextCtrl* remarks_ = nullptr;
};

}  // namespace

std::optional<desk::NewHorn> ask_new_horn(wxWindow* parent, const Tools& tools) {
    const auto& words = tools.desk.words();
    const auto students = tools.desk.file().students();
    const auto offered = desk::kinds_offered(tools.desk);
    Form form(parent, _("Add horn"), _("&Add"));
    KindPicker picker(offered.kinds, words);
    auto* left = new wxBoxSizer(wxVERTICAL);
    left->Add(new wxStaticText(&form, wxID_ANY, _("&Kind:")), wxSizerFlags().Border(wxBOTTOM, gap / 2));
    auto* find = picker.make_field(&form);
    left->Add(find, wxSizerFlags().Expand().Border(wxBOTTOM, gap));
    left->Add(picker.make_list(&form, tools.menus), wxSizerFlags(1).Expand());
    auto* problem = new Paragraph(&form);
    left->Add(problem, wxSizerFlags().Expand().Border(wxTOP, gap));
    problem->say(offered.problem);
    form.beside(left);
    HornFields fields(form, words, students, studio::horn_of(offered.kinds.front()), true);
    picker.on_chosen([&](const horns::HornKind& kind) {
        fields.slides().show(kind, studio::horn_of(kind).slides);
        form.fit();
    });
    picker.choose(0);
    find->SetFocus();
    const bool agreed = form.ask([&]() -> std::optional<Form::Problem> {
        if (picker.chosen() == nullptr) return Form::Problem{find, words.say(Sentence::horn_needs_kind)};
        return fields.problem();
    });
    if (!agreed) return std::nullopt;
    return desk::NewHorn{fields.filled_in(studio::horn_of(*picker.chosen())), fields.slides().positions()};
}

std::optional<studio::Horn> ask_horn(wxWindow* parent, const words::Words& words,
                                     const std::vector<studio::Student>& students,
                                     const studio::Horn& start) {
    Form form(parent, _("Change horn"), _("&Keep"));
    form.row(_("Kind:"), [&](wxWindow* body) {
        return new wxStaticText(body, wxID_ANY, shown_in_label(words::kind_name(studio::kind_of(start))));
    });
    HornFields fields(form, words, students, start, false);
    fields.focus();
    if (!form.ask([&] { return fields.problem(); })) return std::nullopt;
    return fields.filled_in(start);
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
