#include "reports/canvas/page.h"

#include <algorithm>
#include <limits>

#include "model/units/number_text.h"

namespace lowledger::canvas {
namespace {

using units::decimal_text;
using units::Millimetres;

std::string written(Millimetres length) {
    return decimal_text(length.value(), 2);
}

std::string written(Point point) {
    return written(point.x) + " " + written(point.y);
}

std::string written(const Box& box) {
    return written(Point{box.left, box.top}) + " to " + written(Point{box.right(), box.bottom()});
}

std::string name(Tone tone) {
    switch (tone) {
        case Tone::ink:
            return "ink";
        case Tone::faint:
            return "faint";
        case Tone::pale:
            return "pale";
        case Tone::accent:
            return "accent";
        case Tone::paper:
            return "paper";
    }
    return "?";
}

std::string written(const Stroke& stroke) {
    return written(stroke.width) + " " + name(stroke.tone) + (stroke.dashed ? " dashed" : "");
}

std::string written(const TextStyle& style) {
    return decimal_text(style.size.value(), 1) + "pt " + (style.weight == Weight::bold ? "bold " : "") +
           name(style.tone);
}

struct StepWriter {
    std::string operator()(const MoveTo& step) const { return " M " + written(step.to); }
    std::string operator()(const LineTo& step) const { return " L " + written(step.to); }
    std::string operator()(const CurveTo& step) const {
        return " C " + written(step.control1) + " " + written(step.control2) + " " + written(step.to);
    }
    std::string operator()(const Close&) const { return " Z"; }
};

std::string written(const std::vector<PathStep>& steps) {
    std::string text;
    for (const PathStep& step : steps)
        text += std::visit(StepWriter{}, step);
    return text;
}

/// Grows to hold every point of a path, controls included.
struct Hull {
    Millimetres left{std::numeric_limits<double>::infinity()};
    Millimetres top = left;
    Millimetres right = -left;
    Millimetres bottom = -left;

    void add(Point point) {
        left = std::min(left, point.x);
        right = std::max(right, point.x);
        top = std::min(top, point.y);
        bottom = std::max(bottom, point.y);
    }
    void operator()(const MoveTo& step) { add(step.to); }
    void operator()(const LineTo& step) { add(step.to); }
    void operator()(const CurveTo& step) {
        add(step.control1);
        add(step.control2);
        add(step.to);
    }
    void operator()(const Close&) {}
};

struct ItemWriter {
    std::string operator()(const Line& line) const {
        return "line " + written(line.from) + " to " + written(line.to) + " " + written(line.stroke);
    }
    std::string operator()(const Shape& shape) const {
        const std::string start = "shape " + name(shape.tone);
        if (shape.name.empty()) return start + written(shape.steps);
        return start + " " + shape.name + " " + written(extent(shape.steps)) + " steps " +
               std::to_string(shape.steps.size());
    }
    std::string operator()(const Outline& outline) const {
        return "outline " + written(outline.stroke) + written(outline.steps);
    }
    std::string operator()(const Text& text) const {
        return "text " + written(text.baseline) + " " + written(text.style) + " wide " + written(text.width) +
               " \"" + text.text + "\"";
    }
    std::string operator()(const Link& link) const {
        return "link " + written(link.box) + " " + link.address;
    }
};

}  // namespace

Box extent(const std::vector<PathStep>& steps) {
    Hull hull;
    for (const PathStep& step : steps)
        std::visit(hull, step);
    if (hull.left > hull.right) return {};
    return {hull.left, hull.top, hull.right - hull.left, hull.bottom - hull.top};
}

std::string recorded_text(const Page& page) {
    std::string text = "page " + written(page.size.width) + " x " + written(page.size.height) + "\n";
    for (const Item& item : page.items)
        text += std::visit(ItemWriter{}, item) + "\n";
    return text;
}

}  // namespace lowledger::canvas
