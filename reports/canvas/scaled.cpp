#include "reports/canvas/scaled.h"

namespace lowledger::canvas {
namespace {

struct Scaler {
    double factor;

    [[nodiscard]] Point operator()(Point point) const { return {factor * point.x, factor * point.y}; }
    [[nodiscard]] Box operator()(const Box& box) const {
        return {factor * box.left, factor * box.top, factor * box.width, factor * box.height};
    }
    [[nodiscard]] Stroke operator()(Stroke stroke) const {
        stroke.width = factor * stroke.width;
        return stroke;
    }

    [[nodiscard]] PathStep operator()(const MoveTo& step) const { return MoveTo{(*this)(step.to)}; }
    [[nodiscard]] PathStep operator()(const LineTo& step) const { return LineTo{(*this)(step.to)}; }
    [[nodiscard]] PathStep operator()(const CurveTo& step) const {
        return CurveTo{(*this)(step.control1), (*this)(step.control2), (*this)(step.to)};
    }
    [[nodiscard]] PathStep operator()(const Close& step) const { return step; }
    [[nodiscard]] std::vector<PathStep> operator()(const std::vector<PathStep>& steps) const {
        std::vector<PathStep> all;
        all.reserve(steps.size());
        for (const PathStep& step : steps)
            all.push_back(std::visit([this](const auto& known) { return (*this)(known); }, step));
        return all;
    }

    [[nodiscard]] Item operator()(const Line& line) const {
        return Line{(*this)(line.from), (*this)(line.to), (*this)(line.stroke)};
    }
    [[nodiscard]] Item operator()(const Shape& shape) const {
        return Shape{(*this)(shape.steps), shape.tone, shape.name};
    }
    [[nodiscard]] Item operator()(const Outline& outline) const {
        return Outline{(*this)(outline.steps), (*this)(outline.stroke)};
    }
    [[nodiscard]] Item operator()(const Text& text) const {
        TextStyle style = text.style;
        style.size = factor * style.size;
        return Text{(*this)(text.baseline), text.text, style, factor * text.width};
    }
    [[nodiscard]] Item operator()(const Link& link) const { return Link{(*this)(link.box), link.address}; }
};

}  // namespace

Page scaled(const Page& page, double factor) {
    const Scaler scaler{factor};
    Page large{{factor * page.size.width, factor * page.size.height}, {}};
    large.items.reserve(page.items.size());
    for (const Item& item : page.items)
        large.items.push_back(std::visit(scaler, item));
    return large;
}

}  // namespace lowledger::canvas
