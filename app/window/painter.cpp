#include "app/window/painter.h"

#include <algorithm>
#include <cmath>
#include <variant>
#include <wx/brush.h>
#include <wx/pen.h>

namespace lowledger::window {
namespace {

using units::Millimetres;

class Painter {
  public:
    Painter(wxGraphicsContext& context, const canvas::Faces& faces, const Inks& inks, Scale scale)
        : context_(context), faces_(faces), inks_(inks), scale_(scale) {}

    void operator()(const canvas::Line& line) const {
        wxGraphicsPath path = context_.CreatePath();
        path.MoveToPoint(at(line.from));
        path.AddLineToPoint(at(line.to));
        stroke(path, line.stroke);
    }
    void operator()(const canvas::Shape& shape) const { fill(shape.steps, shape.tone); }
    void operator()(const canvas::Outline& outline) const { stroke(path_of(outline.steps), outline.stroke); }
    void operator()(const canvas::Text& text) const {
        fill(faces_.outlines(text.text, text.style, text.baseline), text.style.tone);
    }
    void operator()(const canvas::Link& /*link*/) const {}

  private:
    [[nodiscard]] double pixels(Millimetres length) const { return length.value() * scale_.pixels_per_mm; }
    [[nodiscard]] wxPoint2DDouble at(canvas::Point point) const { return {pixels(point.x), pixels(point.y)}; }

    [[nodiscard]] wxGraphicsPath path_of(const std::vector<canvas::PathStep>& steps) const {
        wxGraphicsPath path = context_.CreatePath();
        for (const auto& step : steps) {
            if (const auto* move = std::get_if<canvas::MoveTo>(&step))
                path.MoveToPoint(at(move->to));
            else if (const auto* line = std::get_if<canvas::LineTo>(&step))
                path.AddLineToPoint(at(line->to));
            else if (const auto* curve = std::get_if<canvas::CurveTo>(&step))
                path.AddCurveToPoint(at(curve->control1), at(curve->control2), at(curve->to));
            else
                path.CloseSubpath();
        }
        return path;
    }

    void fill(const std::vector<canvas::PathStep>& steps, canvas::Tone tone) const {
        context_.SetPen(wxNullPen);
        context_.SetBrush(wxBrush(inks_.of(tone)));
        context_.FillPath(path_of(steps), wxWINDING_RULE);
    }

    void stroke(const wxGraphicsPath& path, const canvas::Stroke& stroke) const {
        // Thinner than a pixel would be a grey that nobody can see.
        const double width = std::max(1.0, pixels(stroke.width));
        wxGraphicsPenInfo pen(inks_.of(stroke.tone), width);
        if (stroke.dashed) {
            static const wxDash dashes[] = {4, 3};
            pen.Style(wxPENSTYLE_USER_DASH).Dashes(2, dashes);
        }
        pen.Cap(stroke.dashed ? wxCAP_BUTT : wxCAP_ROUND);
        context_.SetPen(context_.CreatePen(pen));
        context_.StrokePath(path);
    }

    wxGraphicsContext& context_;
    const canvas::Faces& faces_;
    const Inks& inks_;
    Scale scale_;
};

}  // namespace

int Scale::pixels(Millimetres length) const {
    return static_cast<int>(std::ceil(length.value() * pixels_per_mm));
}

Millimetres Scale::millimetres(int pixels) const {
    return Millimetres(pixels / pixels_per_mm);
}

void paint(wxGraphicsContext& context, const canvas::Page& page, const canvas::Faces& faces, const Inks& inks,
           Scale scale) {
    const Painter painter(context, faces, inks, scale);
    for (const auto& item : page.items)
        std::visit(painter, item);
}

}  // namespace lowledger::window
