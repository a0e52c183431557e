#include "app/window/slip_dialog.h"

#include <algorithm>
#include <functional>
#include <map>
#include <string>
#include <vector>
#include <wx/checkbox.h>
#include <wx/checklst.h>
#include <wx/panel.h>
#include <wx/sizer.h>

#include "app/window/access.h"
#include "app/window/form.h"
#include "app/window/layout.h"
#include "app/window/text.h"

namespace lowledger::window {
namespace {

using desk::Slip;

constexpr int several_height = 120;

/// A control of the form and what it says now.
struct Shown {
    wxWindow* control = nullptr;
    std::function<std::string()> value;
};

Shown date_field(Form& form, const Slip::Field& field) {
    const auto start = studio::Date::parse_iso(field.start);
    wxDatePickerCtrl* made = nullptr;
    form.row(shown(field.label), [&](wxWindow* body) {
        const bool may_be_none = field.kind == Slip::Kind::date_or_none;
        made = new wxDatePickerCtrl(body, wxID_ANY, start ? wx_date(*start) : wxDefaultDateTime,
                                    wxDefaultPosition, wxDefaultSize,
                                    wxDP_DEFAULT | wxDP_SHOWCENTURY | (may_be_none ? wxDP_ALLOWNONE : 0));
        if (!start && may_be_none) made->SetValue(wxDefaultDateTime);
        return made;
    });
    return {made, [made] { return made->GetValue().IsValid() ? date_of(*made).iso() : std::string(); }};
}

Shown choice_field(Form& form, const Slip::Field& field) {
    std::vector<std::string> texts;
    int selected = 0;
    for (const auto& choice : field.choices) {
        if (choice.key == field.start) selected = static_cast<int>(texts.size());
        texts.push_back(choice.text);
    }
    auto* made = form.choice(shown(field.label), texts, selected);
    return {made,
            [made, &field] { return field.choices.at(static_cast<std::size_t>(made->GetSelection())).key; }};
}

std::vector<std::string> ticked_at_first(const Slip::Field& field) {
    return Slip("", "").several(field.id, {}, field.choices, {field.start}).filled_in({}).several(field.id);
}

Shown several_field(Form& form, const Slip::Field& field) {
    wxCheckListBox* made = nullptr;
    form.row(shown(field.label), [&](wxWindow* body) {
        wxArrayString texts;
        for (const auto& choice : field.choices)
            texts.Add(shown(choice.text));
        made = new wxCheckListBox(body, wxID_ANY, wxDefaultPosition, wxSize(-1, several_height), texts);
        const auto chosen = ticked_at_first(field);
        for (unsigned i = 0; i < made->GetCount(); ++i)
            made->Check(i, std::ranges::find(chosen, field.choices[i].key) != chosen.end());
        if (!made->IsEmpty()) made->SetSelection(0);
        return made;
    });
    return {made, [made, &field] {
                std::string keys;
                for (unsigned i = 0; i < made->GetCount(); ++i)
                    if (made->IsChecked(i)) keys += (keys.empty() ? "" : "\n") + field.choices[i].key;
                return keys;
            }};
}

Shown boxes_field(Form& form, const Slip::Field& field) {
    wxPanel* made = nullptr;
    std::vector<wxCheckBox*> boxes;
    form.row(shown(field.label), [&](wxWindow* body) {
        made = new wxPanel(body);
        name_for_readers(made, name_of_label(shown(field.label)));
        auto* row = new wxBoxSizer(wxHORIZONTAL);
        const auto ticked = ticked_at_first(field);
        for (const auto& choice : field.choices) {
            boxes.push_back(new wxCheckBox(made, wxID_ANY, shown(choice.text)));
            boxes.back()->SetName(shown(field.id + " " + choice.key));
            boxes.back()->SetValue(std::ranges::find(ticked, choice.key) != ticked.end());
            row->Add(boxes.back(), wxSizerFlags().Border(wxRIGHT, gap));
        }
        made->SetSizer(row);
        return made;
    });
    return {made, [boxes, &field] {
                std::string keys;
                for (std::size_t i = 0; i < boxes.size(); ++i)
                    if (boxes[i]->GetValue()) keys += (keys.empty() ? "" : "\n") + field.choices[i].key;
                return keys;
            }};
}

Shown shown_field(Form& form, const Slip::Field& field) {
    switch (field.kind) {
        case Slip::Kind::text: {
            auto* made = form.text(shown(field.label), field.start, shown(field.hint));
            return {made, [made] { return utf8(made->GetValue()); }};
        }
        case Slip::Kind::lines: {
            auto* made = form.lines(shown(field.label), field.start);
            return {made, [made] { return utf8(made->GetValue()); }};
        }
        case Slip::Kind::date:
        case Slip::Kind::date_or_none:
            return date_field(form, field);
        case Slip::Kind::check: {
            auto* made = form.check(shown(field.label), field.start == "yes");
            return {made, [made] { return std::string(made->GetValue() ? "yes" : ""); }};
        }
        case Slip::Kind::choice:
            return choice_field(form, field);
        case Slip::Kind::several:
            return several_field(form, field);
        case Slip::Kind::boxes:
            return boxes_field(form, field);
    }
    return {};
}

/// A field that counts only with a choice can be reached only with it.
void follow_choice(const Slip::Field& field, wxWindow& control, wxWindow& choice_control,
                   const Slip::Field& deciding) {
    auto* const choice = dynamic_cast<wxChoice*>(&choice_control);
    const auto follow = [&field, &control, &deciding, choice] {
        const auto& chosen = deciding.choices.at(static_cast<std::size_t>(choice->GetSelection()));
        control.Enable(chosen.key == field.only_with_key);
    };
    choice->Bind(wxEVT_CHOICE, [follow](wxCommandEvent& event) {
        follow();
        event.Skip();
    });
    follow();
}

void follow_choices(const Slip& slip, const std::map<std::string, Shown>& fields) {
    for (const auto& field : slip.fields()) {
        if (field.only_with_choice.empty()) continue;
        const auto of = std::ranges::find(slip.fields(), field.only_with_choice, &Slip::Field::id);
        follow_choice(field, *fields.at(field.id).control, *fields.at(of->id).control, *of);
    }
}

}  // namespace

std::optional<desk::SlipAnswers> ask_slip(wxWindow* parent, const desk::Slip& slip) {
    Form form(parent, shown(slip.title()), shown(slip.verb()));
    if (!slip.note().empty()) form.note(shown(slip.note()));
    std::map<std::string, Shown> fields;
    for (const auto& field : slip.fields()) {
        Shown made = shown_field(form, field);
        made.control->SetName(shown(field.id));
        fields.emplace(field.id, std::move(made));
    }
    follow_choices(slip, fields);
    const auto answers = [&] {
        std::map<std::string, std::string> texts;
        for (const auto& [id, field] : fields)
            texts.emplace(id, field.value());
        return slip.filled_in(texts);
    };
    const bool agreed = form.ask([&]() -> std::optional<Form::Problem> {
        const auto problem = slip.problem(answers());
        if (!problem) return std::nullopt;
        return Form::Problem{fields.at(problem->field).control, problem->sentence};
    });
    if (!agreed) return std::nullopt;
    return answers();
}

}  // namespace lowledger::window
