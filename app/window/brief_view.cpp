#include "app/window/brief_view.h"

#include <wx/settings.h>
#include <wx/sizer.h>

#include "app/window/access.h"
#include "app/window/layout.h"
#include "app/window/text.h"

namespace lowledger::window {
namespace {

constexpr int side = 2 * gap;
constexpr int least_line_width = 80;

}  // namespace

BriefView::BriefView(wxWindow* parent, const std::string& name)
    : wxScrolledWindow(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL) {
    SetScrollRate(0, 12);
    with_steady_bars(this);
    name_for_readers(this, name);
    SetBackgroundColour(wxSystemSettings::GetColour(wxSYS_COLOUR_LISTBOX));
    SetSizer(new wxBoxSizer(wxVERTICAL));
    Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
        wrap();
        event.Skip();
    });
}

void BriefView::show(const std::vector<desk::BriefPart>& parts) {
    if (parts == parts_) return;
    parts_ = parts;
    lines_.clear();
    DestroyChildren();
    auto* all = GetSizer();
    all->Clear();
    for (const auto& part : parts_) {
        all->AddSpacer(side);
        add(heading(this, part.heading), part.heading, 0);
        for (const auto& line : part.lines)
            add(new wxStaticText(this, wxID_ANY, {}), line, gap / 2);
    }
    all->AddSpacer(side);
    wrapped_to_ = 0;
    wrap();
    Scroll(0, 0);
}

void BriefView::add(wxStaticText* line, const std::string& text, int above) {
    lines_.push_back({line, shown(text)});
    auto* row = new wxBoxSizer(wxVERTICAL);
    row->Add(line, wxSizerFlags().Border(wxTOP, above));
    GetSizer()->Add(row, wxSizerFlags().Border(wxLEFT | wxRIGHT, side));
}

void BriefView::wrap() {
    const int width = GetClientSize().GetWidth() - 2 * side;
    if (width < least_line_width || width == wrapped_to_) return;
    wrapped_to_ = width;
    for (const auto& line : lines_) {
        line.field->SetLabelText(line.text);
        line.field->Wrap(width);
    }
    Layout();
    FitInside();
}

}  // namespace lowledger::window
