#include "reports/engraving/curves.h"

#include <algorithm>
#include <utility>

namespace lowledger::engraving {
namespace {

using canvas::Box;
using canvas::Point;
using units::Millimetres;

/// Controls stand at these shares of the way: short curves are round, long ones flat in the middle.
double control_share(const Curve& curve) {
    constexpr Millimetres long_curve{40.0};
    return curve.to.x - curve.from.x > long_curve ? 0.2 : 0.28;
}

/// A cubic's middle reaches three quarters of the way to its controls.
Millimetres control_height(Millimetres height) {
    return height / 0.75;
}

Point along(const Curve& curve, double share, Millimetres rise) {
    const Millimetres y = curve.from.y + (curve.to.y - curve.from.y) * share;
    return {curve.from.x + (curve.to.x - curve.from.x) * share, curve.above ? y - rise : y + rise};
}

Point on(const Curve& curve, double t) {
    const double u = 1.0 - t;
    const double share = control_share(curve);
    const Millimetres rise = control_height(curve.height);
    const Point c1 = along(curve, share, rise);
    const Point c2 = along(curve, 1.0 - share, rise);
    const auto mix = [&](Millimetres a, Millimetres b, Millimetres c, Millimetres d) {
        return a * (u * u * u) + b * (3.0 * u * u * t) + c * (3.0 * u * t * t) + d * (t * t * t);
    };
    return {mix(curve.from.x, c1.x, c2.x, curve.to.x), mix(curve.from.y, c1.y, c2.y, curve.to.y)};
}

bool clear(const Skyline& ink, const Curve& curve, Millimetres gap) {
    constexpr int samples = 40;
    constexpr double tip_share = 0.04;
    for (int i = 1; i < samples; ++i) {
        const double t = static_cast<double>(i) / samples;
        const Point p = on(curve, t);
        if (t < tip_share || t > 1.0 - tip_share) continue;
        for (const Box& box : ink.boxes()) {
            if (p.x < box.left - gap || p.x > box.right() + gap) continue;
            if (curve.above ? p.y > box.top - gap : p.y < box.bottom() + gap) return false;
        }
    }
    return true;
}

}  // namespace

canvas::Shape curve_shape(const Curve& curve, Millimetres thickness, std::string name) {
    constexpr Millimetres half_tip{0.05};
    const double share = control_share(curve);
    const Millimetres outer = control_height(curve.height + thickness / 2.0) - half_tip;
    const Millimetres inner = control_height(curve.height - thickness / 2.0) + half_tip;
    canvas::Shape shape;
    shape.name = std::move(name);
    shape.steps = {canvas::MoveTo{along(curve, 0.0, half_tip)},
                   canvas::CurveTo{along(curve, share, outer), along(curve, 1.0 - share, outer),
                                   along(curve, 1.0, half_tip)},
                   canvas::LineTo{along(curve, 1.0, -half_tip)},
                   canvas::CurveTo{along(curve, 1.0 - share, inner), along(curve, share, inner),
                                   along(curve, 0.0, -half_tip)},
                   canvas::Close{}};
    return shape;
}

Curve slur_clear_of(const Skyline& ink, Curve slur, Millimetres space, Millimetres gap) {
    constexpr double step = 0.25;
    constexpr int most_lifts = 40;
    constexpr int most_bulges = 8;
    const Millimetres usual = slur.height;
    const Point from = slur.from;
    const Point to = slur.to;
    for (int lift = 0; lift < most_lifts; ++lift) {
        const Millimetres by = space * (step * lift) * (slur.above ? -1.0 : 1.0);
        slur.from.y = from.y + by;
        slur.to.y = to.y + by;
        for (int bulge = 0; bulge < most_bulges; ++bulge) {
            slur.height = usual + space * (step * bulge);
            if (clear(ink, slur, gap)) return slur;
        }
    }
    return slur;
}

}  // namespace lowledger::engraving
