#include "reports/charts/gauge_strip.h"

#include <algorithm>
#include <cmath>

#include "model/units/number_text.h"
#include "model/units/refusal.h"
#include "reports/canvas/text_block.h"
#include "reports/charts/shapes.h"

namespace lowledger::charts {
namespace {

using canvas::Page;
using canvas::Point;
using canvas::Stroke;
using canvas::TextStyle;
using canvas::Tone;
using units::Millimetres;

constexpr Millimetres strip_height{14.0};
constexpr Millimetres inset{1.5};
constexpr Millimetres mark_gap{1.6};
constexpr Millimetres mark_width{2.2};
constexpr Millimetres mark_height{2.4};
constexpr Millimetres label_baseline{3.2};
constexpr Millimetres name_baseline{6.7};
constexpr Millimetres number_baseline{9.6};
constexpr Millimetres narrowest_strip{12.0};
constexpr Millimetres cut_line{0.12};
constexpr Millimetres check_length{50.0};
const TextStyle label_style{units::Points(8.5), canvas::Weight::bold, Tone::ink};
const TextStyle name_style{units::Points(8.0), canvas::Weight::regular, Tone::ink};
const TextStyle number_style{units::Points(6.5), canvas::Weight::regular, Tone::ink};

/// Where a text stands beside the mark.
struct Place {
    Millimetres left;
    Millimetres width;
    [[nodiscard]] Millimetres right() const { return left + width; }
};

/// Right of the mark if it fits on the scale, else left of it, else right of it past the scale's end.
Place place_beside(const GaugeStrip& strip, Millimetres width) {
    const Place right{strip.position + mark_gap, width};
    const Place left{strip.position - mark_gap - width, width};
    if (right.right() + inset <= strip.travel || left.left < inset) return right;
    return left;
}

void check(const GaugeStrip& strip) {
    const bool finite = std::isfinite(strip.position.value()) && std::isfinite(strip.travel.value());
    if (!finite || strip.position < Millimetres(0.0) || strip.position > strip.travel) {
        throw units::Refusal("The gauge strip of the " + strip.name + " cannot be drawn: its position (" +
                             units::decimal_text(strip.position.value(), 1) +
                             " mm) must lie between 0 and its travel (" +
                             units::decimal_text(strip.travel.value(), 1) + " mm).");
    }
}

void draw_ticks(Page& page, const canvas::Faces& faces, const GaugeStrip& strip, const Point& at) {
    const auto millimetres = static_cast<int>(std::floor(strip.travel.value() + 1e-9));
    const Millimetres bottom = at.y + strip_height;
    for (int mm = 1; mm <= millimetres; ++mm) {
        const Millimetres x = at.x + Millimetres(mm);
        const Millimetres reach(mm % 10 == 0 ? 4.0 : mm % 5 == 0 ? 3.0 : 2.0);
        page.items.emplace_back(
            canvas::Line{{x, bottom - reach}, {x, bottom}, Stroke{Millimetres(0.12), Tone::ink, false}});
        if (mm % 10 != 0) continue;
        const std::string number = std::to_string(mm);
        const Millimetres half = faces.width(number, number_style) / 2.0;
        const bool clear_of_mark = abs(Millimetres(mm) - strip.position) > half + Millimetres(0.8);
        const bool inside = Millimetres(mm) + half + Millimetres(0.4) < gauge_strip_size(faces, strip).width;
        if (clear_of_mark && inside) {
            draw_text(page, faces, number, number_style, {x, at.y + number_baseline}, canvas::Align::centre);
        }
    }
}

void draw_mark(Page& page, const GaugeStrip& strip, const Point& at) {
    const Millimetres x = at.x + strip.position;
    page.items.emplace_back(
        canvas::Line{{x, at.y}, {x, at.y + strip_height}, Stroke{Millimetres(0.3), Tone::ink, false}});
    const Millimetres left = std::max(x - mark_width / 2.0, at.x);
    add_polygon(page, "set.here", {{left, at.y}, {x + mark_width / 2.0, at.y}, {x, at.y + mark_height}},
                Tone::accent);
}

}  // namespace

canvas::Size gauge_strip_size(const canvas::Faces& faces, const GaugeStrip& strip) {
    Millimetres width = std::max({strip.travel, strip.position + inset, narrowest_strip});
    for (const Millimetres text :
         {faces.width(strip.name, name_style), faces.width(strip.label, label_style)}) {
        width = std::max(width, place_beside(strip, text).right() + inset);
    }
    return {width, strip_height};
}

void draw_gauge_strip(Page& page, const canvas::Faces& faces, const GaugeStrip& strip,
                      const Point& top_left) {
    check(strip);
    const canvas::Size size = gauge_strip_size(faces, strip);
    const canvas::Box box{top_left.x, top_left.y, size.width, size.height};
    add_open_polygon(
        page,
        {{box.left, box.top}, {box.right(), box.top}, {box.right(), box.bottom()}, {box.left, box.bottom()}},
        Stroke{cut_line, Tone::ink, false});
    draw_ticks(page, faces, strip, top_left);
    if (size.width > strip.travel) {
        const Millimetres end = top_left.x + strip.travel;
        page.items.emplace_back(canvas::Line{{end, box.bottom() - Millimetres(5.0)},
                                             {end, box.bottom()},
                                             Stroke{Millimetres(0.5), Tone::ink, false}});
    }
    draw_mark(page, strip, top_left);
    const auto beside = [&](const std::string& text, const TextStyle& style, Millimetres baseline) {
        const Place place = place_beside(strip, faces.width(text, style));
        draw_text(page, faces, text, style, {top_left.x + place.left, top_left.y + baseline},
                  canvas::Align::left);
    };
    beside(strip.label, label_style, label_baseline);
    beside(strip.name, name_style, name_baseline);
}

canvas::Size print_check_size(const canvas::Faces& faces, std::string_view caption) {
    return {std::max(check_length, faces.width(caption, name_style)), Millimetres(7.0)};
}

void draw_print_check(Page& page, const canvas::Faces& faces, std::string_view caption,
                      const Point& top_left) {
    constexpr Millimetres reach{1.5};
    constexpr Millimetres baseline{6.2};
    const Stroke stroke{Millimetres(0.2), Tone::ink, false};
    const Millimetres y = top_left.y + reach;
    page.items.emplace_back(canvas::Line{{top_left.x, y}, {top_left.x + check_length, y}, stroke});
    for (const Millimetres x : {top_left.x, top_left.x + check_length})
        page.items.emplace_back(canvas::Line{{x, y - reach}, {x, y + reach}, stroke});
    draw_text(page, faces, caption, name_style, {top_left.x, top_left.y + baseline}, canvas::Align::left);
}

}  // namespace lowledger::charts
