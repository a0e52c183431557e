#include "reports/engraving/line_marks.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include "reports/canvas/text_block.h"

namespace lowledger::engraving {
namespace {

using units::Millimetres;

constexpr StaffSpaces row_gap{0.8};
constexpr StaffSpaces mark_gap{0.5};
constexpr double numeral_height = 0.72;

Millimetres all_bottom(const Engraver& engraver, const LineSetting& setting) {
    return setting.bottom(Millimetres(-1e6), Millimetres(1e6), engraver.staff_height());
}

template <typename Do>
void for_each_note(const LineSetting& setting, Do&& act) {
    for (std::size_t i = setting.begin(); i < setting.end(); ++i) {
        if (const LineNote* note = setting.line_note(i)) act(i, *note);
    }
}

/// The middle of a sign under a note, a little aside where it would stand out over the staff's end.
Millimetres middle_under(const LineSetting& setting, std::size_t event, Millimetres width) {
    return std::min(setting.anchor(event), setting.staff.width - width / 2.0);
}

void draw_fermatas(const Engraver& engraver, LineSetting& setting) {
    const Millimetres half = engraver.length(engraver.symbols().ink(Symbol::fermata_above).width()) / 2.0;
    for_each_note(setting, [&](std::size_t i, const LineNote& note) {
        if (!note.fermata) return;
        const Millimetres x = setting.anchor(i);
        const Millimetres y = setting.top(x - half, x + half) - engraver.length(mark_gap);
        engraver.draw_standing(setting.page, Symbol::fermata_above, {x, y});
        setting.take_in();
    });
}

/// Between the note's ink and the next event's.
Millimetres breath_middle(const Engraver& engraver, const LineSetting& setting, std::size_t i) {
    const Extent here = engraver.note_extent(setting.line().clef, setting.note(i));
    const Millimetres from = setting.anchor(i) + here.right;
    Millimetres to = setting.staff.width;
    if (i + 1 < setting.end()) {
        to = setting.anchor(i + 1);
        if (setting.line_note(i + 1) != nullptr) {
            to -= engraver.note_extent(setting.line().clef, setting.note(i + 1)).left;
        }
    }
    return (from + to) / 2.0;
}

void draw_breaths(const Engraver& engraver, LineSetting& setting) {
    const Millimetres half = engraver.length(engraver.symbols().ink(Symbol::breath_mark).width()) / 2.0;
    const Millimetres white = engraver.length(StaffSpaces(0.2));
    for_each_note(setting, [&](std::size_t i, const LineNote& note) {
        if (!note.breath) return;
        const Millimetres x = breath_middle(engraver, setting, i);
        const Millimetres y =
            setting.top(x - half - white, x + half + white) - engraver.length(StaffSpaces(0.35));
        engraver.draw_standing(setting.page, Symbol::breath_mark, {x, y});
        setting.take_in();
    });
}

void draw_text_above(const Engraver& engraver, LineSetting& setting, const std::string& text,
                     const canvas::TextStyle& style, Millimetres x) {
    constexpr double descender = 0.23;
    const Millimetres width = engraver.faces().width(text, style);
    const Millimetres gap = engraver.length(mark_gap);
    // A word does not run over the staff's end where it can begin earlier.
    const Millimetres left =
        std::max(std::min(x, setting.staff.width - width), std::min(x, Millimetres(0.0)));
    const Millimetres lowest = setting.top(left - gap, left + width + gap) - gap;
    const Millimetres baseline = lowest - units::in_millimetres(style.size) * descender;
    canvas::draw_text(setting.page, engraver.faces(), text, style, {left, baseline}, canvas::Align::left);
    setting.take_in();
}

void draw_words(const Engraver& engraver, LineSetting& setting) {
    for_each_note(setting, [&](std::size_t i, const LineNote& note) {
        if (note.words.empty()) return;
        const Millimetres left = setting.anchor(i) - engraver.head_width(note.duration) / 2.0;
        draw_text_above(engraver, setting, note.words, engraver.figure_style(), left);
    });
    const std::string& tempo = setting.line().tempo;
    if (tempo.empty() || setting.begin() != 0) return;
    canvas::TextStyle bold = engraver.figure_style();
    bold.weight = canvas::Weight::bold;
    draw_text_above(engraver, setting, tempo, bold, Millimetres(0.0));
}

void draw_octave_sign(const Engraver& engraver, LineSetting& setting, std::size_t first, std::size_t last) {
    const auto extent = [&](std::size_t i) {
        return engraver.note_extent(setting.line().clef, setting.note(i));
    };
    const Millimetres from = setting.anchor(first) - extent(first).left;
    const Millimetres to = setting.anchor(last) + extent(last).right;
    const Millimetres reach = std::max(to, from + engraver.ottava_bassa_width());
    const Millimetres top = setting.bottom(from, reach, engraver.staff_height()) + engraver.length(row_gap);
    engraver.draw_ottava_bassa(setting.page, from, to, top);
    setting.take_in();
}

void draw_octave_signs(const Engraver& engraver, LineSetting& setting) {
    std::vector<std::pair<std::size_t, std::size_t>> runs;
    bool open = false;
    for_each_note(setting, [&](std::size_t i, const LineNote& /*note*/) {
        const bool up = setting.note(i).octave_up;
        if (up && !open) runs.emplace_back(i, i);
        if (up) runs.back().second = i;
        open = up;
    });
    for (const auto& [first, last] : runs)
        draw_octave_sign(engraver, setting, first, last);
}

/// A hairpin's first and last note, and the one after these whose dynamic or hairpin ends it.
struct Pin {
    Hairpin kind = Hairpin::louder;
    std::size_t from = 0;
    std::size_t to = 0;
    std::optional<std::size_t> stop;
};

std::vector<Pin> pins_of(const LineSetting& setting) {
    std::vector<Pin> pins;
    bool open = false;
    for (std::size_t i = 0; i < setting.line().events.size(); ++i) {
        const LineNote* note = setting.line_note(i);
        if (note == nullptr) continue;
        if (open && (note->dynamic || note->hairpin)) {
            pins.back().stop = i;
            open = false;
        }
        if (open) pins.back().to = i;
        if (note->hairpin) {
            pins.push_back({*note->hairpin, i, i, std::nullopt});
            open = true;
        }
    }
    return pins;
}

Millimetres half_dynamic(const Engraver& engraver, const LineNote& note) {
    return note.dynamic ? engraver.dynamic_width(*note.dynamic) / 2.0 : Millimetres(0.0);
}

void draw_pin(const Engraver& engraver, LineSetting& setting, const Pin& pin, Millimetres middle) {
    constexpr StaffSpaces gap{0.4};
    constexpr StaffSpaces opening{1.2};
    constexpr StaffSpaces before_first{1.2};
    constexpr StaffSpaces shortest_rest{1.5};
    constexpr StaffSpaces line{0.13};
    constexpr Millimetres thinnest{0.1};
    if (pin.to < setting.begin() || pin.from >= setting.end()) return;
    const Millimetres space = engraver.length(gap);
    Millimetres from = setting.anchor(setting.begin()) - engraver.length(before_first);
    if (setting.has(pin.from)) {
        const LineNote& note = *setting.line_note(pin.from);
        from = setting.anchor(pin.from) + (note.dynamic ? half_dynamic(engraver, note) + space : -space);
    }
    Millimetres to = setting.staff.width - space;
    if (pin.stop && setting.has(*pin.stop)) {
        const LineNote& note = *setting.line_note(*pin.stop);
        to = setting.anchor(*pin.stop) - std::max(half_dynamic(engraver, note), space) - space;
    } else if (setting.has(pin.to) && pin.to > pin.from) {
        to = setting.anchor(pin.to) + space;
    }
    // The little that is left of one from the system before would be a speck.
    if (!setting.has(pin.from) && to - from < engraver.length(shortest_rest)) return;
    // A hairpin that goes on over a system's end is half open there.
    const bool whole = setting.has(pin.from) && setting.has(pin.to);
    const double at_begin = setting.has(pin.from) ? 0.0 : 0.5;
    const double at_end = whole || setting.has(pin.to) ? 1.0 : 0.5;
    const bool louder = pin.kind == Hairpin::louder;
    const Millimetres left = engraver.length(opening) / 2.0 * (louder ? at_begin : 1.0 - at_begin);
    const Millimetres right = engraver.length(opening) / 2.0 * (louder ? at_end : 1.0 - at_end);
    canvas::Outline outline;
    outline.stroke = {std::max(engraver.length(line), thinnest), canvas::Tone::ink, false};
    outline.steps = {canvas::MoveTo{{from, middle - left}}, canvas::LineTo{{to, middle - right}},
                     canvas::MoveTo{{from, middle + left}}, canvas::LineTo{{to, middle + right}}};
    setting.page.items.emplace_back(std::move(outline));
}

void draw_dynamics(const Engraver& engraver, LineSetting& setting) {
    constexpr StaffSpaces letters_middle{0.55};
    const std::vector<Pin> pins = pins_of(setting);
    const Millimetres baseline =
        all_bottom(engraver, setting) + engraver.length(row_gap) + engraver.dynamic_ascent();
    for_each_note(setting, [&](std::size_t i, const LineNote& note) {
        if (!note.dynamic) return;
        const Millimetres width = engraver.dynamic_width(*note.dynamic);
        engraver.draw_dynamic(setting.page, *note.dynamic,
                              {middle_under(setting, i, width) - width / 2.0, baseline});
    });
    for (const Pin& pin : pins)
        draw_pin(engraver, setting, pin, baseline - engraver.length(letters_middle));
    setting.take_in();
}

void draw_figures(const Engraver& engraver, LineSetting& setting) {
    const Millimetres numerals = units::in_millimetres(engraver.figure_style().size) * numeral_height;
    const Millimetres baseline = all_bottom(engraver, setting) + engraver.length(row_gap) + numerals;
    for_each_note(setting, [&](std::size_t i, const LineNote& note) {
        if (note.figure.empty()) return;
        const Millimetres width = engraver.faces().width(note.figure, engraver.figure_style());
        engraver.draw_figure(setting.page, note.figure, {middle_under(setting, i, width), baseline});
    });
    setting.take_in();
}

void draw_tendencies(const Engraver& engraver, LineSetting& setting) {
    const Millimetres top = all_bottom(engraver, setting) + engraver.length(row_gap);
    for_each_note(setting, [&](std::size_t i, const LineNote& note) {
        if (!note.tendency) return;
        const Millimetres width = engraver.tendency_size(*note.tendency).width;
        engraver.draw_tendency(setting.page, *note.tendency, {middle_under(setting, i, width), top});
    });
    setting.take_in();
}

}  // namespace

void draw_marks(const Engraver& engraver, LineSetting& setting) {
    draw_fermatas(engraver, setting);
    draw_breaths(engraver, setting);
    draw_words(engraver, setting);
    draw_octave_signs(engraver, setting);
    draw_dynamics(engraver, setting);
    draw_figures(engraver, setting);
    draw_tendencies(engraver, setting);
}

}  // namespace lowledger::engraving
