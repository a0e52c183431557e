#include "app/window/drawing.h"

#include <memory>
#include <utility>
#include <wx/dcbuffer.h>
#include <wx/sizer.h>

#include "app/window/access.h"
#include "model/units/refusal.h"

namespace lowledger::window {

Drawing::Drawing(wxWindow* parent, const canvas::Faces& faces, Scale scale)
    : wxPanel(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxBORDER_NONE),
      faces_(faces),
      scale_(scale) {
    SetBackgroundStyle(wxBG_STYLE_PAINT);
    Bind(wxEVT_PAINT, &Drawing::on_paint, this);
    Bind(wxEVT_SIZE, &Drawing::on_size, this);
}

void Drawing::show(Layout layout, const std::string& name, const std::string& content) {
    layout_ = std::move(layout);
    width_laid_out_ = -1;
    name_drawing(this, name, content);
    lay_out();
    Refresh();
}

void Drawing::show_nothing() {
    layout_ = nullptr;
    page_ = {};
    SetMinSize(wxSize(-1, 0));
    Refresh();
}

void Drawing::lay_out() {
    const int width = GetClientSize().GetWidth();
    if (!layout_ || width <= 0 || width == width_laid_out_) return;
    width_laid_out_ = width;
    try {
        page_ = layout_(scale_.millimetres(width));
    } catch (const units::Refusal&) {
        // Too narrow for it, as windows are while they are put together; it is laid out again when it grows.
        page_ = {};
    }
    const int height = scale_.pixels(page_.size.height);
    if (GetMinSize().GetHeight() == height) return;
    SetMinSize(wxSize(GetMinSize().GetWidth(), height));
    if (wxWindow* parent = GetParent()) {
        parent->Layout();
        parent->FitInside();
    }
}

void Drawing::on_size(wxSizeEvent& event) {
    lay_out();
    Refresh();
    event.Skip();
}

void Drawing::on_paint(wxPaintEvent& /*event*/) {
    wxAutoBufferedPaintDC dc(this);
    const Inks inks = screen_inks();
    dc.SetBackground(wxBrush(inks.paper));
    dc.Clear();
    const std::unique_ptr<wxGraphicsContext> context(wxGraphicsContext::Create(dc));
    if (context && layout_) paint(*context, page_, faces_, inks, scale_);
}

}  // namespace lowledger::window
