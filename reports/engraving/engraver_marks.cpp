// The marks around the notes: octave signs, dynamics, figures, tendencies.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "model/units/number_text.h"
#include "reports/canvas/text_block.h"
#include "reports/engraving/engraver.h"

namespace lowledger::engraving {
namespace {

using canvas::Page;
using canvas::Point;
using units::Millimetres;

// Lengths in staff spaces.
constexpr StaffSpaces dash_line_width{0.12};
constexpr StaffSpaces arrow_height{1.7};
constexpr StaffSpaces arrow_width{0.9};
constexpr StaffSpaces arrow_gap{0.3};
constexpr StaffSpaces fork_height{1.5};
constexpr StaffSpaces fork_width{0.9};
/// Between two letters of a dynamic, which lean into each other.
constexpr StaffSpaces dynamic_kern{-0.15};
/// No line of a page is thinner: office printers and copiers lose less.
constexpr Millimetres thinnest_line{0.1};

void add_line(Page& page, Point from, Point to, Millimetres width) {
    page.items.emplace_back(canvas::Line{from, to, canvas::Stroke{width, canvas::Tone::ink, false}});
}

/// A filled polygon.
canvas::Shape polygon(std::string name, std::initializer_list<Point> corners) {
    canvas::Shape shape;
    shape.name = std::move(name);
    for (const Point& corner : corners) {
        if (shape.steps.empty()) {
            shape.steps.emplace_back(canvas::MoveTo{corner});
        } else {
            shape.steps.emplace_back(canvas::LineTo{corner});
        }
    }
    shape.steps.emplace_back(canvas::Close{});
    return shape;
}

std::string tendency_text(units::Cents lean) {
    return units::signed_text(lean.value(), 0, true);
}

bool has_arrow(units::Cents lean) {
    return std::abs(lean.value()) >= 0.5;
}

std::vector<Symbol> letters_of(Dynamic dynamic) {
    using enum Symbol;
    switch (dynamic) {
        case Dynamic::pp:
            return {dynamic_piano, dynamic_piano};
        case Dynamic::p:
            return {dynamic_piano};
        case Dynamic::mp:
            return {dynamic_mezzo, dynamic_piano};
        case Dynamic::mf:
            return {dynamic_mezzo, dynamic_forte};
        case Dynamic::f:
            return {dynamic_forte};
        case Dynamic::ff:
            break;
    }
    return {dynamic_forte, dynamic_forte};
}

/// Bold numerals as high as two spaces, less a little white.
canvas::TextStyle time_style(const Engraver& engraver) {
    constexpr StaffSpaces numeral{1.94};
    constexpr double numeral_share = 0.714;
    return {units::in_points(engraver.length(numeral / numeral_share)), canvas::Weight::bold,
            canvas::Tone::ink};
}

}  // namespace

Millimetres Engraver::time_width(const TimeSignature& time) const {
    const canvas::TextStyle style = time_style(*this);
    return std::max(faces_->width(std::to_string(time.beats), style),
                    faces_->width(std::to_string(time.unit), style));
}

void Engraver::draw_time(Page& page, const Staff& staff, const TimeSignature& time, Millimetres left) const {
    constexpr StaffSpaces white{0.03};
    const canvas::TextStyle style = time_style(*this);
    const Millimetres middle = left + time_width(time) / 2.0;
    canvas::draw_text(page, *faces_, std::to_string(time.beats), style,
                      {middle, y_of(staff, middle_line) - length(white)}, canvas::Align::centre);
    canvas::draw_text(page, *faces_, std::to_string(time.unit), style,
                      {middle, y_of(staff, bottom_line) - length(white)}, canvas::Align::centre);
}

Millimetres Engraver::dynamic_width(Dynamic dynamic) const {
    StaffSpaces width = -dynamic_kern;
    for (const Symbol letter : letters_of(dynamic))
        width += symbols_->ink(letter).width() + dynamic_kern;
    return length(width);
}

Millimetres Engraver::dynamic_ascent() const {
    return length(symbols_->ink(Symbol::dynamic_forte).top);
}

Millimetres Engraver::dynamic_descent() const {
    return length(
        -std::min(symbols_->ink(Symbol::dynamic_forte).bottom, symbols_->ink(Symbol::dynamic_piano).bottom));
}

void Engraver::draw_dynamic(Page& page, Dynamic dynamic, Point baseline_left) const {
    for (const Symbol letter : letters_of(dynamic)) {
        draw_symbol(page, letter, baseline_left);
        baseline_left.x += length(symbols_->ink(letter).width() + dynamic_kern);
    }
}

void Engraver::draw_standing(Page& page, Symbol symbol, Point bottom_centre) const {
    draw_symbol(page, symbol,
                {bottom_centre.x - length(symbols_->ink(symbol).width()) / 2.0, bottom_centre.y});
}

Millimetres Engraver::ottava_bassa_height() const {
    const InkBox& ink = symbols_->ink(Symbol::ottava_bassa);
    return length(ink.top - ink.bottom);
}

Millimetres Engraver::ottava_bassa_width() const {
    return length(symbols_->ink(Symbol::ottava_bassa).width());
}

void Engraver::draw_ottava_bassa(Page& page, Millimetres from, Millimetres to, Millimetres top) const {
    constexpr StaffSpaces line_gap{0.4};
    constexpr StaffSpaces hook{1.0};
    constexpr StaffSpaces shortest_line{1.5};
    const Millimetres bottom = top + ottava_bassa_height();
    draw_symbol(page, Symbol::ottava_bassa, {from, bottom});
    const Millimetres start = from + ottava_bassa_width() + length(line_gap);
    // A shorter line would be a speck: the sign alone says enough over one note.
    if (to - start < length(shortest_line)) return;
    const Millimetres width = std::max(length(dash_line_width), thinnest_line);
    const Millimetres y = bottom - width / 2.0;
    page.items.emplace_back(
        canvas::Line{{start, y}, {to, y}, canvas::Stroke{width, canvas::Tone::ink, true}});
    add_line(page, {to, bottom}, {to, bottom - length(hook)}, width);
}

canvas::TextStyle Engraver::figure_style() const {
    constexpr StaffSpaces size{2.0};
    constexpr units::Points smallest{7.0};
    return {std::max(units::in_points(length(size)), smallest), canvas::Weight::regular, canvas::Tone::ink};
}

void Engraver::draw_figure(Page& page, std::string_view text, Point at, canvas::Weight weight) const {
    canvas::TextStyle style = figure_style();
    style.weight = weight;
    canvas::draw_text(page, *faces_, text, style, at, canvas::Align::centre);
}

canvas::Size Engraver::tendency_size(units::Cents lean) const {
    const Millimetres text = faces_->width(tendency_text(lean), figure_style());
    const Millimetres arrow = has_arrow(lean) ? length(arrow_width + arrow_gap) : Millimetres(0.0);
    return {arrow + text, length(arrow_height)};
}

void Engraver::draw_tendency(Page& page, units::Cents lean, Point top_centre) const {
    constexpr StaffSpaces shaft_width{0.16};
    constexpr StaffSpaces tip_height{0.75};
    const canvas::Size size = tendency_size(lean);
    Millimetres x = top_centre.x - size.width / 2.0;
    const Millimetres bottom = top_centre.y + size.height;
    if (has_arrow(lean)) {
        const bool up = lean.value() > 0.0;
        const Millimetres middle = x + length(arrow_width) / 2.0;
        const Millimetres tip = up ? top_centre.y : bottom;
        const Millimetres tail = up ? bottom : top_centre.y;
        const Millimetres neck = tip + length(tip_height) * (up ? 1.0 : -1.0);
        const Millimetres shaft = length(shaft_width) / 2.0;
        const Millimetres wing = length(arrow_width) / 2.0;
        page.items.emplace_back(polygon(up ? "arrowBlackUp" : "arrowBlackDown", {{middle, tip},
                                                                                 {middle + wing, neck},
                                                                                 {middle + shaft, neck},
                                                                                 {middle + shaft, tail},
                                                                                 {middle - shaft, tail},
                                                                                 {middle - shaft, neck},
                                                                                 {middle - wing, neck}}));
        x += length(arrow_width + arrow_gap);
    }
    canvas::draw_text(page, *faces_, tendency_text(lean), figure_style(), {x, bottom}, canvas::Align::left);
}

canvas::Size Engraver::fork_size() const {
    return {length(fork_width), length(fork_height)};
}

void Engraver::draw_fork(Page& page, Point top_centre) const {
    constexpr StaffSpaces line{0.16};
    const Millimetres width = std::max(length(line), thinnest_line);
    const Millimetres half = length(fork_width) / 2.0 - width / 2.0;
    const Millimetres joint = top_centre.y + length(fork_height) * 0.55;
    const Millimetres top = top_centre.y + width / 2.0;
    const Millimetres bottom = top_centre.y + length(fork_height) - width / 2.0;
    canvas::Outline fork;
    fork.stroke = {width, canvas::Tone::ink, false};
    fork.steps = {
        canvas::MoveTo{{top_centre.x - half, top}},
        canvas::CurveTo{{top_centre.x - half, joint}, {top_centre.x - half, joint}, {top_centre.x, joint}},
        canvas::CurveTo{
            {top_centre.x + half, joint}, {top_centre.x + half, joint}, {top_centre.x + half, top}},
        canvas::MoveTo{{top_centre.x, joint}}, canvas::LineTo{{top_centre.x, bottom}}};
    page.items.emplace_back(std::move(fork));
}

}  // namespace lowledger::engraving
