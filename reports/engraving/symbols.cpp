#include "reports/engraving/symbols.h"

#include <algorithm>
#include <limits>
#include <optional>

namespace lowledger::engraving {
namespace {

using canvas::Faces;
using Step = Faces::Glyph::Step;
using Drawing = SymbolSet::Drawing;

/// How many points a step of an outline has.
std::size_t points_in(const Step& step) {
    switch (step.kind) {
        case Step::Kind::move:
        case Step::Kind::line:
            return 1;
        case Step::Kind::curve:
            return 3;
        case Step::Kind::close:
            break;
    }
    return 0;
}

double bezier(double p0, double p1, double p2, double p3, double t) {
    const double u = 1.0 - t;
    return u * u * u * p0 + 3.0 * u * u * t * p1 + 3.0 * u * t * t * p2 + t * t * t * p3;
}

/// Ink of an outline; curves are followed in small pieces, which finds their bulge to a thousandth of a
/// space.
InkBox ink_of(const std::vector<Step>& steps) {
    constexpr int pieces = 16;
    double left = std::numeric_limits<double>::max();
    double bottom = left;
    double right = std::numeric_limits<double>::lowest();
    double top = right;
    double pen_x = 0.0;
    double pen_y = 0.0;
    const auto meet = [&](double x, double y) {
        left = std::min(left, x);
        right = std::max(right, x);
        bottom = std::min(bottom, y);
        top = std::max(top, y);
    };
    for (const Step& s : steps) {
        const std::size_t count = points_in(s);
        if (count == 0) continue;
        if (count == 3) {
            for (int i = 1; i < pieces; ++i) {
                const double t = static_cast<double>(i) / pieces;
                meet(bezier(pen_x, s.x[0], s.x[1], s.x[2], t), bezier(pen_y, s.y[0], s.y[1], s.y[2], t));
            }
        }
        pen_x = s.x[count - 1];
        pen_y = s.y[count - 1];
        meet(pen_x, pen_y);
    }
    return {StaffSpaces(left), StaffSpaces(right), StaffSpaces(bottom), StaffSpaces(top)};
}

/// x -> x * scale + dx; y likewise with its own sign of scale.
Drawing placed(std::vector<Step> steps, double scale_x, double dx, double scale_y, double dy) {
    for (Step& s : steps) {
        for (std::size_t i = 0; i < points_in(s); ++i) {
            s.x[i] = s.x[i] * scale_x + dx;
            s.y[i] = s.y[i] * scale_y + dy;
        }
    }
    InkBox ink = ink_of(steps);
    return {std::move(steps), ink};
}

/// A glyph of Noto Music, whose em is four staff spaces and whose y = 0 is the bottom line, with its ink's
/// left edge at 0 and the height `origin` above the bottom line at 0.
Drawing notation(const Faces& faces, char32_t code_point, double origin) {
    const Faces::Glyph& glyph = faces.music_glyph(code_point, Faces::MusicFace::notation);
    const double scale = 4.0 / glyph.units_per_em;
    const double left = ink_of(glyph.steps).left.value() * scale;
    return placed(glyph.steps, scale, -left, scale, -origin);
}

/// A notehead, its middle at 0.
Drawing notehead(const Faces& faces, char32_t code_point) {
    const Drawing raw = notation(faces, code_point, 0.0);
    return placed(raw.steps, 1.0, 0.0, 1.0, -(raw.ink.bottom + raw.ink.top).value() / 2.0);
}

/// A sign whose lowest ink is at 0.
Drawing standing(const Faces& faces, char32_t code_point) {
    const Drawing raw = notation(faces, code_point, 0.0);
    return placed(raw.steps, 1.0, 0.0, 1.0, -raw.ink.bottom.value());
}

/// An accidental of DejaVu Sans `height` spaces high, with the height of its note at the share `middle` of
/// it: that face's accidentals are better drawn than Noto Music's.
Drawing accidental(const Faces& faces, char32_t code_point, double height, double middle) {
    const Faces::Glyph& glyph = faces.music_glyph(code_point, Faces::MusicFace::signs);
    const InkBox ink = ink_of(glyph.steps);
    const double scale = height / (ink.top - ink.bottom).value();
    return placed(glyph.steps, scale, -ink.left.value() * scale, scale,
                  -ink.bottom.value() * scale - middle * height);
}

Drawing two_flats(const Drawing& flat) {
    constexpr double overlap = 0.12;
    std::vector<Step> steps = flat.steps;
    const Drawing second = placed(flat.steps, 1.0, flat.ink.width().value() - overlap, 1.0, 0.0);
    steps.insert(steps.end(), second.steps.begin(), second.steps.end());
    return placed(std::move(steps), 1.0, 0.0, 1.0, 0.0);
}

Drawing rectangle(double width, double bottom, double top) {
    const auto at = [](Step::Kind kind, double x, double y) { return Step{kind, {x, 0, 0}, {y, 0, 0}}; };
    return placed(
        {at(Step::Kind::move, 0, bottom), at(Step::Kind::line, width, bottom),
         at(Step::Kind::line, width, top), at(Step::Kind::line, 0, top), at(Step::Kind::close, 0, 0)},
        1.0, 0.0, 1.0, 0.0);
}

std::map<Symbol, Drawing> all_drawings(const Faces& faces) {
    constexpr double flat_height = 2.5;
    constexpr double sharp_height = 2.8;
    constexpr double flat_middle = 0.27;
    constexpr double rest_width = 1.13;
    constexpr double rest_thickness = 0.5;
    std::map<Symbol, Drawing> all;
    all[Symbol::g_clef] = notation(faces, U'\U0001D11E', 1.0);
    all[Symbol::f_clef] = notation(faces, U'\U0001D122', 3.0);
    all[Symbol::c_clef] = notation(faces, U'\U0001D121', 2.0);
    all[Symbol::notehead_whole] = notehead(faces, U'\U0001D15D');
    all[Symbol::notehead_half] = notehead(faces, U'\U0001D157');
    all[Symbol::notehead_black] = notehead(faces, U'\U0001D158');
    all[Symbol::flat] = accidental(faces, U'\u266D', flat_height, flat_middle);
    all[Symbol::natural] = accidental(faces, U'\u266E', sharp_height, 0.5);
    all[Symbol::sharp] = accidental(faces, U'\u266F', sharp_height, 0.5);
    all[Symbol::double_flat] = two_flats(all[Symbol::flat]);
    all[Symbol::double_sharp] = notehead(faces, U'\U0001D12A');
    const Drawing flag = notation(faces, U'\U0001D16E', 0.0);
    all[Symbol::flag_8th_up] = placed(flag.steps, 1.0, 0.0, 1.0, -flag.ink.top.value());
    all[Symbol::flag_8th_down] = placed(flag.steps, 1.0, 0.0, -1.0, flag.ink.top.value());
    all[Symbol::rest_whole] = rectangle(rest_width, -rest_thickness, 0.0);
    all[Symbol::rest_half] = rectangle(rest_width, 0.0, rest_thickness);
    all[Symbol::rest_quarter] = notation(faces, U'\U0001D13D', 2.0);
    all[Symbol::rest_8th] = notation(faces, U'\U0001D13E', 2.0);
    all[Symbol::ottava_bassa] = standing(faces, U'\U0001D137');
    all[Symbol::augmentation_dot] = notehead(faces, U'\U0001D16D');
    all[Symbol::fermata_above] = standing(faces, U'\U0001D110');
    all[Symbol::breath_mark] = standing(faces, U'\U0001D112');
    // The font draws these above its own baseline; theirs is the foot of the m.
    const double foot = notation(faces, U'\U0001D190', 0.0).ink.bottom.value();
    all[Symbol::dynamic_piano] = notation(faces, U'\U0001D18F', foot);
    all[Symbol::dynamic_mezzo] = notation(faces, U'\U0001D190', foot);
    all[Symbol::dynamic_forte] = notation(faces, U'\U0001D191', foot);
    return all;
}

}  // namespace

std::string_view smufl_name(Symbol symbol) {
    switch (symbol) {
        case Symbol::g_clef:
            return "gClef";
        case Symbol::f_clef:
            return "fClef";
        case Symbol::c_clef:
            return "cClef";
        case Symbol::notehead_whole:
            return "noteheadWhole";
        case Symbol::notehead_half:
            return "noteheadHalf";
        case Symbol::notehead_black:
            return "noteheadBlack";
        case Symbol::double_flat:
            return "accidentalDoubleFlat";
        case Symbol::flat:
            return "accidentalFlat";
        case Symbol::natural:
            return "accidentalNatural";
        case Symbol::sharp:
            return "accidentalSharp";
        case Symbol::double_sharp:
            return "accidentalDoubleSharp";
        case Symbol::flag_8th_up:
            return "flag8thUp";
        case Symbol::flag_8th_down:
            return "flag8thDown";
        case Symbol::rest_whole:
            return "restWhole";
        case Symbol::rest_half:
            return "restHalf";
        case Symbol::rest_quarter:
            return "restQuarter";
        case Symbol::rest_8th:
            return "rest8th";
        case Symbol::ottava_bassa:
            return "ottavaBassaVb";
        case Symbol::augmentation_dot:
            return "augmentationDot";
        case Symbol::fermata_above:
            return "fermataAbove";
        case Symbol::breath_mark:
            return "breathMarkComma";
        case Symbol::dynamic_piano:
            return "dynamicPiano";
        case Symbol::dynamic_mezzo:
            return "dynamicMezzo";
        case Symbol::dynamic_forte:
            break;
    }
    return "dynamicForte";
}

SymbolSet::SymbolSet(const canvas::Faces& faces) : drawings_(all_drawings(faces)) {}

const InkBox& SymbolSet::ink(Symbol symbol) const {
    return drawings_.at(symbol).ink;
}

canvas::Shape SymbolSet::shape(Symbol symbol, canvas::Point at, units::Millimetres space,
                               canvas::Tone tone) const {
    canvas::Shape shape;
    shape.tone = tone;
    shape.name = smufl_name(symbol);
    for (const Step& s : drawings_.at(symbol).steps) {
        const auto point = [&](std::size_t i) {
            return canvas::Point{at.x + space * s.x[i], at.y - space * s.y[i]};
        };
        switch (s.kind) {
            case Step::Kind::move:
                shape.steps.emplace_back(canvas::MoveTo{point(0)});
                break;
            case Step::Kind::line:
                shape.steps.emplace_back(canvas::LineTo{point(0)});
                break;
            case Step::Kind::curve:
                shape.steps.emplace_back(canvas::CurveTo{point(0), point(1), point(2)});
                break;
            case Step::Kind::close:
                shape.steps.emplace_back(canvas::Close{});
                break;
        }
    }
    return shape;
}

}  // namespace lowledger::engraving
