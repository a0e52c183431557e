#include "reports/engraving/ink.h"

#include <algorithm>
#include <cmath>
#include <variant>

namespace lowledger::engraving {
namespace {

using canvas::Box;
using canvas::Point;
using units::Millimetres;

struct Inker {
    Box operator()(const canvas::Line& line) const {
        const Millimetres half = line.stroke.width / 2.0;
        const bool level = line.from.y == line.to.y;
        const bool upright = line.from.x == line.to.x;
        // Ends are cut square, so a stroke widens across its direction alone.
        const Millimetres dx = level ? Millimetres(0.0) : half;
        const Millimetres dy = upright ? Millimetres(0.0) : half;
        return {std::min(line.from.x, line.to.x) - dx, std::min(line.from.y, line.to.y) - dy,
                abs(line.from.x - line.to.x) + dx * 2.0, abs(line.from.y - line.to.y) + dy * 2.0};
    }
    Box operator()(const canvas::Shape& shape) const { return canvas::extent(shape.steps); }
    Box operator()(const canvas::Outline& outline) const {
        const Box box = canvas::extent(outline.steps);
        const Millimetres half = outline.stroke.width / 2.0;
        return {box.left - half, box.top - half, box.width + half * 2.0, box.height + half * 2.0};
    }
    Box operator()(const canvas::Text& text) const {
        constexpr double ascender = 0.77;
        constexpr double descender = 0.23;
        const Millimetres size = units::in_millimetres(text.style.size);
        return {text.baseline.x, text.baseline.y - size * ascender, text.width,
                size * (ascender + descender)};
    }
    Box operator()(const canvas::Link& link) const { return link.box; }
};

void move(Point& point, const Point& by) {
    point.x += by.x;
    point.y += by.y;
}

void move(std::vector<canvas::PathStep>& steps, const Point& by) {
    for (canvas::PathStep& step : steps) {
        if (auto* to = std::get_if<canvas::MoveTo>(&step)) {
            move(to->to, by);
        } else if (auto* line = std::get_if<canvas::LineTo>(&step)) {
            move(line->to, by);
        } else if (auto* curve = std::get_if<canvas::CurveTo>(&step)) {
            move(curve->control1, by);
            move(curve->control2, by);
            move(curve->to, by);
        }
    }
}

struct Mover {
    Point by;
    void operator()(canvas::Line& line) const {
        move(line.from, by);
        move(line.to, by);
    }
    void operator()(canvas::Shape& shape) const { move(shape.steps, by); }
    void operator()(canvas::Outline& outline) const { move(outline.steps, by); }
    void operator()(canvas::Text& text) const { move(text.baseline, by); }
    void operator()(canvas::Link& link) const {
        link.box.left += by.x;
        link.box.top += by.y;
    }
};

}  // namespace

Box ink_of(const canvas::Item& item) {
    return std::visit(Inker{}, item);
}

canvas::Item moved(canvas::Item item, const Point& by) {
    std::visit(Mover{by}, item);
    return item;
}

std::optional<Millimetres> Skyline::top(Millimetres from, Millimetres to) const {
    std::optional<Millimetres> highest;
    for (const Box& box : boxes_) {
        if (box.right() <= from || box.left >= to) continue;
        highest = std::min(highest.value_or(box.top), box.top);
    }
    return highest;
}

std::optional<Millimetres> Skyline::bottom(Millimetres from, Millimetres to) const {
    std::optional<Millimetres> lowest;
    for (const Box& box : boxes_) {
        if (box.right() <= from || box.left >= to) continue;
        lowest = std::max(lowest.value_or(box.bottom()), box.bottom());
    }
    return lowest;
}

}  // namespace lowledger::engraving
