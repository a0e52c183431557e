#include "reports/engraving/engraver.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "model/units/number_text.h"
#include "model/units/refusal.h"
#include "reports/canvas/text_block.h"

namespace lowledger::engraving {
namespace {

using canvas::Page;
using canvas::Point;
using units::Millimetres;

// Lengths in staff spaces.
constexpr StaffSpaces staff_line_width{0.13};
constexpr StaffSpaces stem_width{0.12};
constexpr StaffSpaces ledger_width{0.16};
constexpr StaffSpaces ledger_overhang{0.3};
constexpr StaffSpaces accidental_gap{0.25};
constexpr StaffSpaces key_step_gap{0.1};
/// A stem leaves its head this far above (or below) the middle.
constexpr StaffSpaces stem_joint{0.17};
constexpr StaffSpaces thin_bar_line{0.16};
constexpr StaffSpaces thick_bar_line{0.5};
constexpr StaffSpaces bar_line_gap{0.4};
constexpr StaffSpaces dash_line_width{0.12};
constexpr StaffSpaces arrow_height{1.7};
constexpr StaffSpaces arrow_width{0.9};
constexpr StaffSpaces arrow_gap{0.3};
constexpr StaffSpaces fork_height{1.5};
constexpr StaffSpaces fork_width{0.9};
/// No line of a page is thinner: office printers and copiers lose less.
constexpr Millimetres thinnest_line{0.1};

Symbol head_of(Duration duration) {
    switch (duration) {
        case Duration::whole:
            return Symbol::notehead_whole;
        case Duration::half:
            return Symbol::notehead_half;
        case Duration::quarter:
        case Duration::eighth:
            break;
    }
    return Symbol::notehead_black;
}

Symbol rest_of(Duration duration) {
    switch (duration) {
        case Duration::whole:
            return Symbol::rest_whole;
        case Duration::half:
            return Symbol::rest_half;
        case Duration::quarter:
            return Symbol::rest_quarter;
        case Duration::eighth:
            break;
    }
    return Symbol::rest_8th;
}

Symbol clef_symbol(horns::Clef clef) {
    switch (clef) {
        case horns::Clef::treble:
            return Symbol::g_clef;
        case horns::Clef::bass:
            return Symbol::f_clef;
        case horns::Clef::tenor:
        case horns::Clef::alto:
            break;
    }
    return Symbol::c_clef;
}

std::optional<Symbol> accidental_of(const Note& note) {
    if (note.accidental == AccidentalMark::hidden) return std::nullopt;
    switch (note.spelling.alteration) {
        case -2:
            return Symbol::double_flat;
        case -1:
            return Symbol::flat;
        case 1:
            return Symbol::sharp;
        case 2:
            return Symbol::double_sharp;
        default:
            break;
    }
    if (note.accidental == AccidentalMark::always) return Symbol::natural;
    return std::nullopt;
}

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

}  // namespace

Engraver::Engraver(const canvas::Faces& faces, Millimetres space)
    : faces_(&faces), symbols_(std::make_shared<const SymbolSet>(faces)), space_(space) {
    if (!(space >= Millimetres(0.5) && space <= Millimetres(20.0))) {
        throw units::Refusal("A staff whose lines lie " + units::decimal_text(space.value(), 2) +
                             " mm apart cannot be read; use 0.5 to 20 mm.");
    }
}

Millimetres Engraver::staff_line() const {
    return std::max(length(staff_line_width), thinnest_line);
}

Millimetres Engraver::y_of(const Staff& staff, StaffPosition position) const {
    return staff.top_left.y + space_ * ((top_line.half_spaces - position.half_spaces) / 2.0);
}

void Engraver::draw_symbol(Page& page, Symbol symbol, Point at) const {
    page.items.emplace_back(symbols_->shape(symbol, at, space_));
}

void Engraver::draw_staff(Page& page, const Staff& staff) const {
    for (int p = top_line.half_spaces; p >= bottom_line.half_spaces; p -= 2) {
        const Millimetres y = y_of(staff, {p});
        add_line(page, {staff.top_left.x, y}, {staff.top_left.x + staff.width, y}, staff_line());
    }
}

Millimetres Engraver::clef_width(horns::Clef clef) const {
    return length(symbols_->ink(clef_symbol(clef)).width());
}

void Engraver::draw_clef(Page& page, const Staff& staff, Millimetres left) const {
    draw_symbol(page, clef_symbol(staff.clef), {left, y_of(staff, line_of_clef(staff.clef))});
}

Millimetres Engraver::key_width(KeySignature key) const {
    const Symbol sign = key.fifths > 0 ? Symbol::sharp : Symbol::flat;
    const int count = std::min(std::abs(key.fifths), 7);
    if (count == 0) return Millimetres(0.0);
    return length(symbols_->ink(sign).width() * count + key_step_gap * (count - 1));
}

void Engraver::draw_key(Page& page, const Staff& staff, KeySignature key, Millimetres left) const {
    const Symbol sign = key.fifths > 0 ? Symbol::sharp : Symbol::flat;
    for (const StaffPosition position : key_positions(staff.clef, key)) {
        draw_symbol(page, sign, {left, y_of(staff, position)});
        left += length(symbols_->ink(sign).width() + key_step_gap);
    }
}

StaffPosition Engraver::position_of(horns::Clef clef, const Note& note) const {
    constexpr int octave = 7;
    const StaffPosition sounding = engraving::position_of(clef, note.spelling);
    return {sounding.half_spaces + (note.octave_up ? octave : 0)};
}

Extent Engraver::note_extent(horns::Clef clef, const Note& note) const {
    const StaffPosition position = position_of(clef, note);
    const StaffSpaces middle((top_line.half_spaces - position.half_spaces) / 2.0);
    const InkBox& head = symbols_->ink(head_of(note.duration));
    const StaffSpaces half = head.width() / 2.0;
    StaffSpaces left = half;
    StaffSpaces right = half;
    StaffSpaces top = middle - head.top;
    StaffSpaces bottom = middle - head.bottom;
    const std::vector<StaffPosition> ledgers = ledger_lines(position);
    if (!ledgers.empty()) {
        left += ledger_overhang;
        right += ledger_overhang;
        for (const StaffPosition line : {ledgers.front(), ledgers.back()}) {
            const StaffSpaces at((top_line.half_spaces - line.half_spaces) / 2.0);
            top = std::min(top, at - ledger_width / 2.0);
            bottom = std::max(bottom, at + ledger_width / 2.0);
        }
    }
    if (const auto accidental = accidental_of(note)) {
        const InkBox& ink = symbols_->ink(*accidental);
        left += accidental_gap + ink.width();
        top = std::min(top, middle - ink.top);
        bottom = std::max(bottom, middle - ink.bottom);
    }
    if (note.duration != Duration::whole) {
        const bool up = stem_goes_up(position);
        const StaffSpaces tip = up ? middle - stem_length(position) : middle + stem_length(position);
        top = std::min(top, tip);
        bottom = std::max(bottom, tip);
        if (note.duration == Duration::eighth) {
            const StaffSpaces flag = symbols_->ink(Symbol::flag_8th_up).width();
            right = std::max(right, up ? half - stem_width + flag : flag - half);
        }
    }
    return {length(left), length(right), length(top), length(bottom)};
}

void Engraver::draw_stem(Page& page, const Staff& staff, const Note& note, Millimetres anchor) const {
    const StaffPosition position = position_of(staff.clef, note);
    const Millimetres half = length(symbols_->ink(head_of(note.duration)).width()) / 2.0;
    const Millimetres y = y_of(staff, position);
    const bool up = stem_goes_up(position);
    const double direction = up ? -1.0 : 1.0;
    const Millimetres x = anchor + (half - length(stem_width) / 2.0) * -direction;
    const Millimetres tip = y + length(stem_length(position)) * direction;
    add_line(page, {x, y + length(stem_joint) * direction}, {x, tip}, length(stem_width));
    if (note.duration == Duration::eighth) {
        draw_symbol(page, up ? Symbol::flag_8th_up : Symbol::flag_8th_down,
                    {x - length(stem_width) / 2.0, tip});
    }
}

void Engraver::draw_note(Page& page, const Staff& staff, const Note& note, Millimetres anchor) const {
    const StaffPosition position = position_of(staff.clef, note);
    const Symbol head = head_of(note.duration);
    const Millimetres half = length(symbols_->ink(head).width()) / 2.0;
    const Millimetres y = y_of(staff, position);
    Millimetres clear_left = anchor - half;
    for (const StaffPosition line : ledger_lines(position)) {
        const Millimetres reach = half + length(ledger_overhang);
        const Millimetres at = y_of(staff, line);
        add_line(page, {anchor - reach, at}, {anchor + reach, at},
                 std::max(length(ledger_width), thinnest_line));
        clear_left = anchor - reach;
    }
    if (const auto accidental = accidental_of(note)) {
        const Millimetres width = length(symbols_->ink(*accidental).width());
        draw_symbol(page, *accidental, {clear_left - length(accidental_gap) - width, y});
    }
    draw_symbol(page, head, {anchor - half, y});
    if (note.duration != Duration::whole) draw_stem(page, staff, note, anchor);
}

Millimetres Engraver::rest_width(Duration duration) const {
    return length(symbols_->ink(rest_of(duration)).width());
}

void Engraver::draw_rest(Page& page, const Staff& staff, Duration duration, Millimetres left) const {
    constexpr StaffPosition whole_rest_hangs_from{6};
    const StaffPosition at = duration == Duration::whole ? whole_rest_hangs_from : middle_line;
    draw_symbol(page, rest_of(duration), {left, y_of(staff, at)});
}

Millimetres Engraver::bar_line_width(BarLine kind) const {
    switch (kind) {
        case BarLine::single:
            return length(thin_bar_line);
        case BarLine::double_line:
            return length(thin_bar_line * 2.0 + bar_line_gap);
        case BarLine::final_line:
            return length(thin_bar_line + bar_line_gap + thick_bar_line);
        case BarLine::repeat_starts:
        case BarLine::repeat_ends:
            break;
    }
    return length(thin_bar_line + bar_line_gap * 2.0 + thick_bar_line) + repeat_dot_width();
}

Millimetres Engraver::repeat_dot_width() const {
    return length(symbols_->ink(Symbol::augmentation_dot).width());
}

void Engraver::draw_bar_line(Page& page, const Staff& staff, BarLine kind, Millimetres left) const {
    const Millimetres overlap = staff_line() / 2.0;
    const Millimetres top = y_of(staff, top_line) - overlap;
    const Millimetres bottom = y_of(staff, bottom_line) + overlap;
    const auto draw = [&](StaffSpaces width) {
        const Millimetres x = left + length(width) / 2.0;
        add_line(page, {x, top}, {x, bottom}, length(width));
        left += length(width + bar_line_gap);
    };
    const auto draw_dots = [&] {
        for (const int space : {3, 5})
            draw_symbol(page, Symbol::augmentation_dot, {left, y_of(staff, {space})});
        left += repeat_dot_width() + length(bar_line_gap);
    };
    if (kind == BarLine::repeat_ends) draw_dots();
    if (kind == BarLine::repeat_starts) draw(thick_bar_line);
    draw(thin_bar_line);
    if (kind == BarLine::double_line) draw(thin_bar_line);
    if (kind == BarLine::final_line || kind == BarLine::repeat_ends) draw(thick_bar_line);
    if (kind == BarLine::repeat_starts) draw_dots();
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
