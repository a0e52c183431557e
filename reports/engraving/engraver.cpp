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
constexpr StaffSpaces rest_dot_gap{0.4};
constexpr StaffSpaces thin_bar_line{0.16};
constexpr StaffSpaces thick_bar_line{0.5};
constexpr StaffSpaces bar_line_gap{0.4};
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
        const Stem stem = stem_of(clef, note);
        const StaffSpaces tip = stem.up ? middle - stem.length : middle + stem.length;
        top = std::min(top, tip);
        bottom = std::max(bottom, tip);
        if (note.duration == Duration::eighth && stem.flag) {
            const StaffSpaces flag = symbols_->ink(Symbol::flag_8th_up).width();
            right = std::max(right, stem.up ? half - stem_width + flag : flag - half);
        }
    }
    if (note.dots > 0) {
        right = std::max(right, StaffSpaces(dot_right(clef, note) / space_));
    }
    return {length(left), length(right), length(top), length(bottom)};
}

Millimetres Engraver::head_width(Duration duration) const {
    return length(symbols_->ink(head_of(duration)).width());
}

Stem Engraver::stem_of(horns::Clef clef, const Note& note) const {
    if (note.stem) return *note.stem;
    const StaffPosition position = position_of(clef, note);
    return {stem_goes_up(position), stem_length(position), true};
}

Millimetres Engraver::stem_offset(Duration duration, bool up) const {
    const Millimetres offset = head_width(duration) / 2.0 - length(stem_width) / 2.0;
    return up ? offset : -offset;
}

Millimetres Engraver::dot_offset(horns::Clef clef, const Note& note) const {
    constexpr StaffSpaces gap{0.45};
    Millimetres right = head_width(note.duration) / 2.0;
    const Stem stem = stem_of(clef, note);
    if (note.duration == Duration::eighth && stem.flag && stem.up) {
        right += length(symbols_->ink(Symbol::flag_8th_up).width() - stem_width);
    }
    return right + length(gap);
}

Millimetres Engraver::dot_right(horns::Clef clef, const Note& note) const {
    return dot_offset(clef, note) + length(symbols_->ink(Symbol::augmentation_dot).width());
}

Millimetres Engraver::stem_width_on_page() const {
    return std::max(length(stem_width), thinnest_line);
}

void Engraver::draw_stem(Page& page, const Staff& staff, const Note& note, Millimetres anchor) const {
    const Stem stem = stem_of(staff.clef, note);
    const Millimetres y = y_of(staff, position_of(staff.clef, note));
    const double direction = stem.up ? -1.0 : 1.0;
    const Millimetres x = anchor + stem_offset(note.duration, stem.up);
    const Millimetres tip = y + length(stem.length) * direction;
    add_line(page, {x, y + length(stem_joint) * direction}, {x, tip}, stem_width_on_page());
    if (note.duration == Duration::eighth && stem.flag) {
        draw_symbol(page, stem.up ? Symbol::flag_8th_up : Symbol::flag_8th_down,
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
    if (note.dots > 0) {
        const bool on_a_line = position.half_spaces % 2 == 0;
        const StaffPosition space{position.half_spaces + (on_a_line ? 1 : 0)};
        draw_symbol(page, Symbol::augmentation_dot,
                    {anchor + dot_offset(staff.clef, note), y_of(staff, space)});
    }
}

Millimetres Engraver::rest_width(Duration duration, int dots) const {
    const StaffSpaces sign = symbols_->ink(rest_of(duration)).width();
    if (dots == 0) return length(sign);
    return length(sign + rest_dot_gap + symbols_->ink(Symbol::augmentation_dot).width());
}

void Engraver::draw_rest(Page& page, const Staff& staff, Duration duration, Millimetres left,
                         int dots) const {
    constexpr StaffPosition whole_rest_hangs_from{6};
    constexpr StaffPosition third_space{5};
    const StaffPosition at = duration == Duration::whole ? whole_rest_hangs_from : middle_line;
    draw_symbol(page, rest_of(duration), {left, y_of(staff, at)});
    if (dots == 0) return;
    draw_symbol(page, Symbol::augmentation_dot,
                {left + rest_width(duration) + length(rest_dot_gap), y_of(staff, third_space)});
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
        add_line(page, {x, top}, {x, bottom}, std::max(length(width), thinnest_line));
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

}  // namespace lowledger::engraving
