#include <wx/filepicker.h>

#include "app/window/access.h"
#include "app/window/dialogs.h"
#include "app/window/form.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "model/units/number_text.h"

namespace lowledger::window {
namespace {

using studio::StudioFacts;
using words::Sentence;

/// The fields of a studio's facts, in a form that may have others.
class FactsFields {
  public:
    FactsFields(Form& form, const words::Words& words, const StudioFacts& start)
        : name_(form.text(_("Studio's &name:"), start.name)),
          teacher_(form.text(_("&Teacher:"), start.teacher, _("as handouts name you"))),
          school_(form.text(_("&School:"), start.school)),
          a4_(form.text(_("&A4, Hz:"), short_decimal(start.a4.value()))),
          room_(form.text(_("Usual &room, °C:"), short_decimal(start.usual_room.value()))),
          paper_(form.choice(_("&Paper:"), {"A4", "Letter"}, start.paper == StudioFacts::Paper::a4 ? 0 : 1)),
          accidentals_(form.choice(_("&Black keys as:"), {"flats", "sharps"},
                                   start.accidentals == units::Accidentals::flats ? 0 : 1)),
          naming_(form.choice(_("Na&mes of notes:"),
                              {words.say(Sentence::naming_english), words.say(Sentence::naming_german),
                               words.say(Sentence::naming_solfege)},
                              static_cast<int>(start.naming))) {}

    [[nodiscard]] std::optional<Form::Problem> problem(const words::Words& words) const {
        if (trimmed(*name_).empty()) return Form::Problem{name_, words.say(Sentence::studio_needs_name)};
        const auto a4 = units::parse_decimal(trimmed(*a4_));
        if (!a4 || *a4 < 400.0 || *a4 > 480.0)
            return Form::Problem{a4_, words.say(Sentence::head_a4_refused, {{"typed", trimmed(*a4_)}})};
        const auto room = units::parse_decimal(trimmed(*room_));
        if (!room || *room < 0.0 || *room > 40.0)
            return Form::Problem{room_,
                                 words.say(Sentence::studio_room_refused, {{"typed", trimmed(*room_)}})};
        return std::nullopt;
    }

    [[nodiscard]] StudioFacts facts() const {
        StudioFacts facts;
        facts.name = trimmed(*name_);
        facts.teacher = trimmed(*teacher_);
        facts.school = trimmed(*school_);
        facts.a4 = units::Hertz(units::parse_decimal(trimmed(*a4_)).value_or(440.0));
        facts.usual_room = units::Celsius(units::parse_decimal(trimmed(*room_)).value_or(21.0));
        facts.paper = paper_->GetSelection() == 0 ? StudioFacts::Paper::a4 : StudioFacts::Paper::letter;
        facts.accidentals =
            accidentals_->GetSelection() == 0 ? units::Accidentals::flats : units::Accidentals::sharps;
        facts.naming = static_cast<units::Naming>(naming_->GetSelection());
        return facts;
    }

  private:
    wxTextCtrl* name_;
    wxTextCtrl* teacher_;
    wxTextCtrl* school_;
    wxTextCtrl* a4_;
    wxTextCtrl* room_;
    wxChoice* paper_;
    wxChoice* accidentals_;
    wxChoice* naming_;
};

}  // namespace

std::optional<desk::NewStudio> ask_new_studio(wxWindow* parent, const words::Words& words,
                                              const desk::NewStudio& start) {
    Form form(parent, _("New studio"), _("&Make studio"));
    const FactsFields fields(form, words, start.facts);
    wxFilePickerCtrl* file = nullptr;
    form.row(_("&File:"), [&](wxWindow* body) {
        file = new wxFilePickerCtrl(body, wxID_ANY, shown(start.path.string()), _("Where to keep the studio"),
                                    _("Studios (*.lowledger)|*.lowledger"), wxDefaultPosition, wxDefaultSize,
                                    wxFLP_SAVE | wxFLP_USE_TEXTCTRL);
        name_with_parts(file, utf8(_("File")));
        return file;
    });
    const auto path = [&] {
        std::filesystem::path chosen(utf8(file->GetPath()));
        if (chosen.extension() != ".lowledger") chosen += ".lowledger";
        return chosen;
    };
    const bool agreed = form.ask([&]() -> std::optional<Form::Problem> {
        if (const auto problem = fields.problem(words)) return problem;
        if (file->GetPath().empty()) return Form::Problem{file, words.say(Sentence::studio_needs_file)};
        if (std::filesystem::exists(path()))
            return Form::Problem{file, words.say(Sentence::studio_file_exists, {{"file", path().string()}})};
        return std::nullopt;
    });
    if (!agreed) return std::nullopt;
    return desk::NewStudio{path(), fields.facts()};
}

std::optional<StudioFacts> ask_facts(wxWindow* parent, const words::Words& words, const StudioFacts& start) {
    Form form(parent, _("About this studio"), _("&Keep"));
    const FactsFields fields(form, words, start);
    if (!form.ask([&] { return fields.problem(words); })) return std::nullopt;
    return fields.facts();
}

}  // namespace lowledger::window
