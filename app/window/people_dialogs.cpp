#include <algorithm>

#include "app/window/dialogs.h"
#include "app/window/form.h"
#include "app/window/text.h"
#include "model/studio/kind_of.h"
#include "model/units/number_text.h"
#include "reports/words/names.h"

namespace lowledger::window {
namespace {

using words::Sentence;

}  // namespace

std::optional<studio::Student> ask_student(wxWindow* parent, const words::Words& words,
                                           const std::vector<desk::ReaderOffer>& readers,
                                           const studio::Student& start) {
    Form form(parent, start.id.filed() ? _("Change student") : _("Add student"),
              start.id.filed() ? _("&Keep") : _("&Add"));
    auto* name = form.text(_("&Name:"), start.name);
    auto* called = form.text(_("Ca&lled:"), start.called, _("the first word of the name"));
    auto* group = form.text(_("&Class or band:"), start.group);
    auto* level = form.choice(_("L&evel:"),
                              {words.say(Sentence::level_beginner), words.say(Sentence::level_middle),
                               words.say(Sentence::level_advanced)},
                              static_cast<int>(start.level));
    auto* tolerance = form.text(
        _("&Tolerance, cents:"),
        start.tolerance ? units::decimal_text(start.tolerance->value(), 0) : std::string(), _("the level's"));
    std::vector<std::string> reader_texts;
    for (const auto& offer : readers)
        reader_texts.push_back(offer.text);
    const auto reader_now = std::ranges::find(readers, start.reader, &desk::ReaderOffer::id);
    auto* reader =
        form.choice(_("Rea&ds:"), reader_texts,
                    reader_now == readers.end() ? 0 : static_cast<int>(reader_now - readers.begin()));
    auto* signs =
        form.choice(_("&Black keys as:"),
                    {words.say(Sentence::student_signs_studio), utf8(_("flats")), utf8(_("sharps"))},
                    !start.accidentals                                ? 0
                    : *start.accidentals == units::Accidentals::flats ? 1
                                                                      : 2);
    auto* remarks = form.lines(_("&Remarks (never printed):"), start.remarks);
    const auto wanted = [&] {
        studio::Student student = start;
        student.name = trimmed(*name);
        student.called = trimmed(*called);
        student.group = trimmed(*group);
        student.level = static_cast<studio::Level>(level->GetSelection());
        student.tolerance.reset();
        if (const auto cents = units::parse_decimal(trimmed(*tolerance)))
            student.tolerance = units::Cents(*cents);
        student.reader = readers.at(static_cast<std::size_t>(reader->GetSelection())).id;
        student.accidentals.reset();
        if (signs->GetSelection() > 0)
            student.accidentals =
                signs->GetSelection() == 1 ? units::Accidentals::flats : units::Accidentals::sharps;
        student.remarks = utf8(remarks->GetValue());
        return student;
    };
    const bool agreed = form.ask([&]() -> std::optional<Form::Problem> {
        if (trimmed(*name).empty()) return Form::Problem{name, words.say(Sentence::student_needs_name)};
        const std::string typed = trimmed(*tolerance);
        const auto cents = units::parse_decimal(typed);
        if (!typed.empty() && (!cents || *cents < 1.0 || *cents > 50.0))
            return Form::Problem{tolerance,
                                 words.say(Sentence::student_tolerance_refused, {{"typed", typed}})};
        return std::nullopt;
    });
    if (!agreed) return std::nullopt;
    return wanted();
}

std::optional<desk::HornChoice> ask_horn_of(wxWindow* parent, const words::Words& words,
                                            const studio::Student& student,
                                            const std::vector<studio::Horn>& horns,
                                            const desk::HornChoice& start) {
    Form form(parent, _("Choose a horn"), _("&Choose"));
    form.note(shown(words.say(Sentence::choose_horn_note, {{"name", student.name}})));
    std::vector<std::string> titles;
    int selected = 0;
    for (const auto& horn : horns) {
        if (horn.id == start.horn) selected = static_cast<int>(titles.size());
        titles.push_back(horn.mark + " · " + words::kind_name(studio::kind_of(horn)));
    }
    auto* horn = form.choice(_("&Horn:"), titles, selected);
    auto* from = form.date(_("&From:"), start.from);
    wxCheckBox* instead = nullptr;
    if (start.horn.filed()) instead = form.check(_("&Give back the horn played until now"), start.instead);
    if (!form.ask([] { return std::nullopt; })) return std::nullopt;
    return desk::HornChoice{horns.at(static_cast<std::size_t>(horn->GetSelection())).id, date_of(*from),
                            instead == nullptr || instead->GetValue()};
}

}  // namespace lowledger::window
