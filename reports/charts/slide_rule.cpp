#include "reports/charts/slide_rule.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "model/units/number_text.h"
#include "model/units/refusal.h"
#include "reports/canvas/text_block.h"
#include "reports/charts/shapes.h"

namespace lowledger::charts {
namespace {

using canvas::Page;
using canvas::Stroke;
using canvas::TextStyle;
using canvas::Tone;
using units::Millimetres;

constexpr Millimetres rule_height{13.0};
constexpr Millimetres inset_left{4.0};
constexpr Millimetres inset_right{5.0};
constexpr Millimetres scale_y{6.4};
constexpr Millimetres goal_baseline{2.9};
constexpr Millimetres number_baseline{12.3};
constexpr Millimetres mark_height{2.5};
constexpr Millimetres mark_width{2.4};
constexpr Millimetres band_height{2.4};
constexpr Millimetres number_gap{0.9};
const TextStyle scale_style{units::Points(7.5), canvas::Weight::regular, Tone::faint};
const TextStyle now_style{units::Points(8.0), canvas::Weight::regular, Tone::ink};
const TextStyle goal_style{units::Points(9.0), canvas::Weight::bold, Tone::accent};

std::string written(Millimetres position) {
    const double tenths = std::round(position.value() * 10.0);
    return units::decimal_text(position.value(), std::fmod(tenths, 10.0) == 0.0 ? 0 : 1);
}

/// A number of the scale and the room it takes.
struct Number {
    std::string text;
    TextStyle style;
    Millimetres middle;
    Millimetres width;
    [[nodiscard]] bool touches(const Number& other) const {
        return abs(middle - other.middle) < (width + other.width) / 2.0 + number_gap;
    }
};

class Drawer {
  public:
    Drawer(Page& page, const canvas::Faces& faces, const SlideRule& rule, const canvas::Box& box)
        : page_(page), faces_(faces), rule_(rule), box_(box), line_(box.top + scale_y) {}

    void draw() {
        draw_band();
        draw_scale();
        draw_stops();
        draw_now();
        draw_goal();
        draw_numbers();
    }

  private:
    [[nodiscard]] Millimetres x(Millimetres position) const {
        return x_on_rule(rule_, box_, std::clamp(position, Millimetres(0.0), rule_.travel));
    }
    void line(canvas::Point from, canvas::Point to, Millimetres width, Tone tone) {
        page_.items.emplace_back(canvas::Line{from, to, Stroke{width, tone, false}});
    }

    void draw_band() {
        if (!rule_.recommended || rule_.half_width <= Millimetres(0.0)) return;
        const Millimetres from = x(*rule_.recommended - rule_.half_width);
        const Millimetres to = x(*rule_.recommended + rule_.half_width);
        const Millimetres top = line_ - band_height / 2.0;
        add_rectangle(page_, "sureness", {from, top, to - from, band_height}, Tone::pale);
        for (const Millimetres end : {from, to})
            line({end, top}, {end, top + band_height}, Millimetres(0.15), Tone::faint);
    }

    void draw_scale() {
        constexpr Millimetres fine{5.0};
        const Millimetres least = std::min(rule_.least, rule_.travel);
        line({x(Millimetres(0.0)), line_}, {x(least), line_}, Millimetres(0.15), Tone::faint);
        line({x(least), line_}, {x(rule_.travel), line_}, Millimetres(0.3), Tone::ink);
        const auto ticks = static_cast<int>(std::floor(rule_.travel / fine + 1e-9));
        for (int i = 1; i <= ticks; ++i) {
            const Millimetres at = x(fine * i);
            const Millimetres reach(i % 2 == 0 ? 1.7 : 1.0);
            line({at, line_}, {at, line_ + reach}, Millimetres(0.15), Tone::ink);
        }
    }

    void draw_stops() {
        constexpr Millimetres above{1.7};
        constexpr Millimetres thick{1.0};
        const auto thin_stop = [&](Millimetres position, Tone tone) {
            line({x(position), line_ - above}, {x(position), line_ + above}, Millimetres(0.3), tone);
        };
        thin_stop(Millimetres(0.0), Tone::faint);
        if (rule_.least > Millimetres(0.0)) thin_stop(rule_.least, Tone::ink);
        add_rectangle(page_, "stop", {x(rule_.travel), line_ - above, thick, above * 2.0}, Tone::ink);
    }

    void draw_now() {
        if (!rule_.now) return;
        const Millimetres at = x(*rule_.now);
        const canvas::Point tip{at, line_ + Millimetres(0.3)};
        const canvas::Point left{at - mark_width / 2.0, tip.y + mark_height};
        const canvas::Point right{at + mark_width / 2.0, tip.y + mark_height};
        add_polygon(page_, "now", {tip, right, left}, Tone::paper);
        add_open_polygon(page_, {tip, right, left}, Stroke{Millimetres(0.25), Tone::ink, false});
    }

    void draw_goal() {
        if (!rule_.recommended) return;
        const Millimetres at = x(*rule_.recommended);
        const canvas::Point tip{at, line_};
        const Millimetres top = tip.y - mark_height;
        add_polygon(page_, "recommended", {tip, {at - mark_width / 2.0, top}, {at + mark_width / 2.0, top}},
                    Tone::accent);
        const Number number = number_of(written(*rule_.recommended) + " mm", goal_style, at);
        draw_text(page_, faces_, number.text, number.style, {number.middle, box_.top + goal_baseline},
                  canvas::Align::centre);
    }

    /// A number near `middle`, kept inside the box.
    [[nodiscard]] Number number_of(std::string text, const TextStyle& style, Millimetres middle) const {
        const Millimetres width = faces_.width(text, style);
        const Millimetres half = width / 2.0;
        const Millimetres kept =
            std::clamp(middle, box_.left + half, std::max(box_.left + half, box_.right() - half));
        return {std::move(text), style, kept, width};
    }

    void draw_numbers() {
        std::vector<Number> placed;
        const auto place = [&](Millimetres position, const TextStyle& style) {
            const Number number = number_of(written(position), style, x(position));
            const auto touches = [&](const Number& other) { return number.touches(other); };
            if (std::none_of(placed.begin(), placed.end(), touches)) placed.push_back(number);
        };
        if (rule_.now) place(*rule_.now, now_style);
        place(rule_.travel, scale_style);
        place(Millimetres(0.0), scale_style);
        const Millimetres step = number_step();
        const auto count = static_cast<int>(std::floor(rule_.travel / step + 1e-9));
        for (int i = 1; i <= count; ++i)
            place(step * i, scale_style);
        for (const Number& number : placed) {
            draw_text(page_, faces_, number.text, number.style, {number.middle, box_.top + number_baseline},
                      canvas::Align::centre);
        }
    }

    /// The least step of round numbers whose numbers do not touch each other.
    [[nodiscard]] Millimetres number_step() const {
        constexpr Millimetres step_gap{4.0};
        constexpr std::array<double, 6> steps = {5.0, 10.0, 20.0, 50.0, 100.0, 200.0};
        const Millimetres widest = faces_.width(written(rule_.travel), scale_style) + step_gap;
        for (const double step : steps) {
            if (x_on_rule(rule_, box_, Millimetres(step)) - x_on_rule(rule_, box_, Millimetres(0.0)) >=
                widest) {
                return Millimetres(step);
            }
        }
        return Millimetres(1000.0);
    }

    Page& page_;
    const canvas::Faces& faces_;
    const SlideRule& rule_;
    const canvas::Box& box_;
    Millimetres line_;
};

}  // namespace

Millimetres slide_rule_height() {
    return rule_height;
}

Millimetres x_on_rule(const SlideRule& rule, const canvas::Box& box, Millimetres position) {
    const Millimetres length = box.width - inset_left - inset_right;
    return box.left + inset_left + length * (position / rule.travel);
}

void draw_slide_rule(Page& page, const canvas::Faces& faces, const SlideRule& rule, const canvas::Box& box) {
    if (!(rule.travel > Millimetres(0.0))) {
        throw units::Refusal("A slide without travel cannot be drawn; give its travel in mm.");
    }
    Drawer(page, faces, rule, box).draw();
}

}  // namespace lowledger::charts
