#include "app/window/slides_block.h"

#include <wx/sizer.h>

#include "app/window/access.h"
#include "app/window/layout.h"
#include "app/window/text.h"
#include "model/studio/tuner_number.h"
#include "model/units/number_text.h"

namespace lowledger::window {
namespace {

using units::Millimetres;
using words::Sentence;

constexpr int length_width = 76;
constexpr double longest_travel = 1000.0;

/// What is written, else what the kind says.
std::optional<double> length_in(const wxTextCtrl& field, Millimetres as_kind) {
    const std::string typed = trimmed(field);
    return typed.empty() ? as_kind.value() : units::parse_decimal(typed);
}

/// Empty where it is as the kind says.
std::string different(Millimetres value, Millimetres as_kind) {
    return value == as_kind ? std::string() : short_decimal(value.value());
}

}  // namespace

studio::HornSlide SlidesBlock::Line::value() const {
    return {as_kind.slide, Millimetres(length_in(*least, as_kind.least).value_or(0.0)),
            Millimetres(length_in(*travel, as_kind.travel).value_or(0.0)), stuck->GetValue()};
}

std::optional<Form::Problem> SlidesBlock::Line::problem(const words::Words& words) const {
    const auto low = length_in(*least, as_kind.least);
    if (!low || *low < 0.0)
        return Form::Problem{
            least, words.say(Sentence::slide_length_refused, {{"typed", trimmed(*least)}, {"slide", name}})};
    const auto high = length_in(*travel, as_kind.travel);
    if (!high || *high <= *low || *high > longest_travel)
        return Form::Problem{
            travel, words.say(Sentence::slide_travel_refused,
                              {{"typed", trimmed(*travel).empty() ? short_decimal(as_kind.travel.value())
                                                                  : trimmed(*travel)},
                               {"slide", name}})};
    if (stands == nullptr || trimmed(*stands).empty()) return std::nullopt;
    const auto position = studio::read_slide_position(trimmed(*stands), Millimetres(*high));
    if (position && *position <= Millimetres(*high)) return std::nullopt;
    return Form::Problem{
        stands, words.say(Sentence::head_slide_refused,
                          {{"typed", trimmed(*stands)}, {"slide", name}, {"travel", short_decimal(*high)}})};
}

wxTextCtrl* SlidesBlock::make_field(const std::string& slide, const wxString& what, const std::string& value,
                                    const std::string& hint) {
    auto* field =
        new wxTextCtrl(this, wxID_ANY, shown(value), wxDefaultPosition, wxSize(length_width, -1), wxTE_RIGHT);
    field->SetHint(shown(hint));
    name_for_readers(field, slide + ", " + utf8(what));
    GetSizer()->Add(field);
    return field;
}

SlidesBlock::Line SlidesBlock::make_line(const horns::HornKind& kind, const studio::HornSlide& slide) {
    Line line;
    const auto* of_kind = kind.slide(slide.slide);
    line.name = of_kind != nullptr ? of_kind->name : slide.slide;
    line.as_kind = slide;
    if (of_kind != nullptr) {
        line.as_kind.least = of_kind->least;
        line.as_kind.travel = of_kind->travel;
    }
    GetSizer()->Add(new wxStaticText(this, wxID_ANY, shown_in_label(line.name)),
                    wxSizerFlags().CentreVertical());
    if (with_positions_) {
        line.stands = make_field(line.name, _("stands at, mm"), {}, "?");
        line.stands->SetName(shown("stands " + slide.slide));
    }
    line.least = make_field(line.name, _("least, mm"), different(slide.least, line.as_kind.least),
                            short_decimal(line.as_kind.least.value()));
    line.travel = make_field(line.name, _("travel, mm"), different(slide.travel, line.as_kind.travel),
                             short_decimal(line.as_kind.travel.value()));
    line.travel->SetName(shown("travel " + slide.slide));
    line.stuck = new wxCheckBox(this, wxID_ANY, _("stuck"));
    line.stuck->SetValue(slide.stuck);
    name_for_readers(line.stuck, line.name + ", " + utf8(_("stuck")));
    GetSizer()->Add(line.stuck, wxSizerFlags().CentreVertical());
    return line;
}

void SlidesBlock::show(const horns::HornKind& kind, const std::vector<studio::HornSlide>& slides) {
    DestroyChildren();
    lines_.clear();
    SetSizer(new wxFlexGridSizer(with_positions_ ? 5 : 4, wxSize(10, 4)));
    std::vector<wxString> titles{wxString(), _("least, mm"), _("travel, mm"), wxString()};
    if (with_positions_) titles.insert(titles.begin() + 1, _("stands at, mm"));
    for (const auto& title : titles)
        GetSizer()->Add(new wxStaticText(this, wxID_ANY, title));
    for (const auto& slide : slides)
        lines_.push_back(make_line(kind, slide));
    GetSizer()->SetSizeHints(this);
    Layout();
}

std::optional<Form::Problem> SlidesBlock::problem(const words::Words& words) const {
    for (const auto& line : lines_)
        if (auto problem = line.problem(words)) return problem;
    return std::nullopt;
}

std::vector<studio::HornSlide> SlidesBlock::slides() const {
    std::vector<studio::HornSlide> slides;
    for (const auto& line : lines_)
        slides.push_back(line.value());
    return slides;
}

std::map<std::string, Millimetres> SlidesBlock::positions() const {
    std::map<std::string, Millimetres> positions;
    for (const auto& line : lines_) {
        if (line.stands == nullptr || trimmed(*line.stands).empty()) continue;
        if (const auto position = studio::read_slide_position(trimmed(*line.stands), line.value().travel))
            positions[line.as_kind.slide] = *position;
    }
    return positions;
}

}  // namespace lowledger::window
