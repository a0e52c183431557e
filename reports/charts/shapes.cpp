#include "reports/charts/shapes.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace lowledger::charts {
namespace {

std::vector<canvas::PathStep> closed_path(std::initializer_list<canvas::Point> corners) {
    std::vector<canvas::PathStep> steps;
    for (const canvas::Point& corner : corners) {
        if (steps.empty()) {
            steps.emplace_back(canvas::MoveTo{corner});
        } else {
            steps.emplace_back(canvas::LineTo{corner});
        }
    }
    steps.emplace_back(canvas::Close{});
    return steps;
}

}  // namespace

void add_rectangle(canvas::Page& page, std::string name, const canvas::Box& box, canvas::Tone tone) {
    add_polygon(
        page, std::move(name),
        {{box.left, box.top}, {box.right(), box.top}, {box.right(), box.bottom()}, {box.left, box.bottom()}},
        tone);
}

void add_frame(canvas::Page& page, const canvas::Box& box, const canvas::Stroke& stroke) {
    const units::Millimetres in = std::min({stroke.width, box.width, box.height}) / 2.0;
    add_open_polygon(page,
                     {{box.left + in, box.top + in},
                      {box.right() - in, box.top + in},
                      {box.right() - in, box.bottom() - in},
                      {box.left + in, box.bottom() - in}},
                     stroke);
}

void add_polygon(canvas::Page& page, std::string name, std::initializer_list<canvas::Point> corners,
                 canvas::Tone tone) {
    page.items.emplace_back(canvas::Shape{closed_path(corners), tone, std::move(name)});
}

void add_open_polygon(canvas::Page& page, std::initializer_list<canvas::Point> corners,
                      const canvas::Stroke& stroke) {
    page.items.emplace_back(canvas::Outline{closed_path(corners), stroke});
}

units::Millimetres numeral_height(const canvas::TextStyle& style) {
    // Noto Sans: capital and numeral height 714 of 1000 units.
    return units::in_millimetres(style.size) * 0.714;
}

units::Millimetres middle_baseline(units::Millimetres y, const canvas::TextStyle& style) {
    return y + numeral_height(style) / 2.0;
}

}  // namespace lowledger::charts
