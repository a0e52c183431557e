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

/// Four cubics, at most 0.03 % of the radius beside a circle.
std::vector<canvas::PathStep> circle(const canvas::Point& middle, units::Millimetres radius) {
    constexpr double control_share = 0.5523;
    const units::Millimetres c = radius * control_share;
    const units::Millimetres x = middle.x;
    const units::Millimetres y = middle.y;
    return {canvas::MoveTo{{x + radius, y}},
            canvas::CurveTo{{x + radius, y + c}, {x + c, y + radius}, {x, y + radius}},
            canvas::CurveTo{{x - c, y + radius}, {x - radius, y + c}, {x - radius, y}},
            canvas::CurveTo{{x - radius, y - c}, {x - c, y - radius}, {x, y - radius}},
            canvas::CurveTo{{x + c, y - radius}, {x + radius, y - c}, {x + radius, y}},
            canvas::Close{}};
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

void add_disc(canvas::Page& page, std::string name, canvas::Point middle, units::Millimetres radius,
              canvas::Tone tone) {
    page.items.emplace_back(canvas::Shape{circle(middle, radius), tone, std::move(name)});
}

void add_ring(canvas::Page& page, canvas::Point middle, units::Millimetres radius,
              const canvas::Stroke& stroke) {
    page.items.emplace_back(canvas::Outline{circle(middle, radius - stroke.width / 2.0), stroke});
}

units::Millimetres numeral_height(const canvas::TextStyle& style) {
    // Noto Sans: capital and numeral height 714 of 1000 units.
    return units::in_millimetres(style.size) * 0.714;
}

units::Millimetres middle_baseline(units::Millimetres y, const canvas::TextStyle& style) {
    return y + numeral_height(style) / 2.0;
}

}  // namespace lowledger::charts
