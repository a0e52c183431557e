#include "app/window/layout.h"

#include "app/window/text.h"
#include "model/units/number_text.h"

namespace lowledger::window {

wxStaticText* heading(wxWindow* parent, const std::string& text) {
    auto* line = new wxStaticText(parent, wxID_ANY, {});
    // The font first: the size is taken when the text is set.
    line->SetFont(line->GetFont().Bold());
    line->SetLabel(shown_in_label(text));
    return line;
}

std::string short_decimal(double value) {
    std::string text = units::decimal_text(value, 1);
    if (text.ends_with(".0")) text.resize(text.size() - 2);
    return text;
}

}  // namespace lowledger::window
