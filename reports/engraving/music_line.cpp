#include "reports/engraving/music_line.h"

#include <algorithm>
#include <map>
#include <numeric>

#include "model/units/number_text.h"
#include "model/units/refusal.h"

namespace lowledger::engraving {
namespace {

using units::Millimetres;

constexpr StaffSpaces inset{0.6};
constexpr StaffSpaces after_clef{0.8};
constexpr StaffSpaces after_key{1.2};
constexpr StaffSpaces between{0.35};
constexpr StaffSpaces around_bar_line{0.8};
constexpr StaffSpaces figure_gap{0.6};
constexpr StaffSpaces under_notes{0.8};
constexpr double numeral_height = 0.72;

/// One event in the row of springs: ink around its anchor and the space it would like after it.
struct Column {
    StaffSpaces left;
    StaffSpaces right;
    StaffSpaces half_figure;
    StaffSpaces natural;
    bool bar_line = false;
};

/// Space after a duration, an eighth's being 2: by the square root of the duration.
StaffSpaces natural_space(Duration duration) {
    switch (duration) {
        case Duration::whole:
            return StaffSpaces(5.66);
        case Duration::half:
            return StaffSpaces(4.0);
        case Duration::quarter:
            return StaffSpaces(2.83);
        case Duration::eighth:
            break;
    }
    return StaffSpaces(2.0);
}

Note note_of(const LineNote& note, AccidentalMark accidental) {
    return {note.spelling, note.duration, accidental, false};
}

StaffSpaces in_spaces(const Engraver& engraver, Millimetres length) {
    return StaffSpaces(length / engraver.space());
}

std::vector<Column> columns_of(const Engraver& engraver, const MusicLine& line) {
    const std::vector<AccidentalMark> accidentals = accidentals_of(line);
    std::vector<Column> columns;
    for (std::size_t i = 0; i < line.events.size(); ++i) {
        const Event& event = line.events[i];
        Column column;
        if (const auto* note = std::get_if<LineNote>(&event)) {
            const Extent extent = engraver.note_extent(line.clef, note_of(*note, accidentals[i]));
            column.left = in_spaces(engraver, extent.left);
            column.right = in_spaces(engraver, extent.right);
            column.natural = natural_space(note->duration);
            if (!note->figure.empty()) {
                column.half_figure =
                    in_spaces(engraver, engraver.faces().width(note->figure, engraver.figure_style()) / 2.0);
            }
        } else if (const auto* rest = std::get_if<Rest>(&event)) {
            column.left = column.right = in_spaces(engraver, engraver.rest_width(rest->duration) / 2.0);
            column.natural = natural_space(rest->duration);
        } else {
            const Millimetres width = engraver.bar_line_width(std::get<BarLine>(event));
            column.left = column.right = in_spaces(engraver, width / 2.0);
            column.bar_line = true;
        }
        columns.push_back(column);
    }
    return columns;
}

StaffSpaces start_of(const Engraver& engraver, const MusicLine& line) {
    StaffSpaces start = inset + in_spaces(engraver, engraver.clef_width(line.clef)) + after_key;
    if (line.key.fifths != 0) start += after_clef + in_spaces(engraver, engraver.key_width(line.key));
    return start;
}

/// From anchor to anchor at the least, for ink on the staff.
StaffSpaces least_advance(const Column& from, const Column& to) {
    const bool at_bar = from.bar_line || to.bar_line;
    return from.right + to.left + (at_bar ? around_bar_line : between);
}

std::vector<StaffSpaces> advances(const std::vector<Column>& columns, double stretch) {
    std::vector<StaffSpaces> result;
    StaffSpaces since_figure;
    StaffSpaces half_figure;
    for (std::size_t i = 0; i + 1 < columns.size(); ++i) {
        if (columns[i].half_figure > StaffSpaces(0.0)) {
            half_figure = columns[i].half_figure;
            since_figure = StaffSpaces(0.0);
        }
        const Column& next = columns[i + 1];
        StaffSpaces step = std::max(least_advance(columns[i], next), columns[i].natural * stretch);
        // A figure may be wider than its note and meet another over events that have none.
        if (half_figure > StaffSpaces(0.0) && next.half_figure > StaffSpaces(0.0)) {
            step = std::max(step, half_figure + next.half_figure + figure_gap - since_figure);
        }
        since_figure += step;
        result.push_back(step);
    }
    return result;
}

/// Width that the events take, from the first one's left ink to the last one's right.
StaffSpaces width_of(const std::vector<Column>& columns, double stretch) {
    if (columns.empty()) return StaffSpaces(0.0);
    const std::vector<StaffSpaces> steps = advances(columns, stretch);
    return std::accumulate(steps.begin(), steps.end(), columns.front().left + columns.back().right);
}

/// The stretch at which the events fill `width`; their width grows with it.
double stretch_to_fill(const std::vector<Column>& columns, StaffSpaces width) {
    constexpr int halvings = 60;
    double low = 0.0;
    double high = 1.0;
    while (width_of(columns, high) < width && high < 1e6)
        high *= 2.0;
    for (int i = 0; i < halvings; ++i) {
        const double middle = (low + high) / 2.0;
        (width_of(columns, middle) < width ? low : high) = middle;
    }
    return low;
}

Millimetres lowest_ink(const Engraver& engraver, const MusicLine& line,
                       const std::vector<AccidentalMark>& accidentals) {
    constexpr StaffSpaces longest_rest_below{3.6};
    Millimetres lowest = std::max(engraver.staff_height(), engraver.length(longest_rest_below));
    if (line.clef == horns::Clef::treble) {
        const StaffSpaces line_of_g(3.0);
        lowest = std::max(lowest, engraver.length(line_of_g - engraver.symbols().ink(Symbol::g_clef).bottom));
    }
    for (std::size_t i = 0; i < line.events.size(); ++i) {
        if (const auto* note = std::get_if<LineNote>(&line.events[i])) {
            lowest = std::max(lowest, engraver.note_extent(line.clef, note_of(*note, accidentals[i])).bottom);
        }
    }
    return lowest;
}

}  // namespace

std::vector<AccidentalMark> accidentals_of(const MusicLine& line) {
    std::vector<AccidentalMark> marks;
    std::map<int, int> in_bar;
    for (const Event& event : line.events) {
        AccidentalMark mark = AccidentalMark::hidden;
        if (std::holds_alternative<BarLine>(event)) in_bar.clear();
        if (const auto* note = std::get_if<LineNote>(&event)) {
            const auto [known, is_new] = in_bar.try_emplace(note->spelling.diatonic_step(),
                                                            alteration_in(line.key, note->spelling.letter));
            if (known->second != note->spelling.alteration) mark = AccidentalMark::always;
            known->second = note->spelling.alteration;
        }
        marks.push_back(mark);
    }
    return marks;
}

Millimetres narrowest_line(const Engraver& engraver, const MusicLine& line) {
    return engraver.length(start_of(engraver, line) + width_of(columns_of(engraver, line), 0.0));
}

std::vector<Millimetres> anchors_of(const Engraver& engraver, const MusicLine& line, const Staff& staff) {
    const Millimetres narrowest = narrowest_line(engraver, line);
    if (staff.width < narrowest) {
        throw units::Refusal("This line of music needs a staff of " +
                             units::decimal_text(narrowest.value(), 0) + " mm and has " +
                             units::decimal_text(staff.width.value(), 0) +
                             " mm; use a smaller staff or fewer notes.");
    }
    const std::vector<Column> columns = columns_of(engraver, line);
    std::vector<Millimetres> anchors;
    if (columns.empty()) return anchors;
    const StaffSpaces start = start_of(engraver, line);
    const StaffSpaces room = in_spaces(engraver, staff.width) - start;
    StaffSpaces at = start + columns.front().left;
    anchors.push_back(staff.top_left.x + engraver.length(at));
    for (const StaffSpaces step : advances(columns, stretch_to_fill(columns, room))) {
        at += step;
        anchors.push_back(staff.top_left.x + engraver.length(at));
    }
    return anchors;
}

Millimetres draw_music_line(canvas::Page& page, const Engraver& engraver, const MusicLine& line,
                            const canvas::Point& top_left, Millimetres width) {
    const Staff staff{line.clef, top_left, width};
    const std::vector<Millimetres> anchors = anchors_of(engraver, line, staff);
    const std::vector<AccidentalMark> accidentals = accidentals_of(line);
    const Millimetres lowest = top_left.y + lowest_ink(engraver, line, accidentals);
    const Millimetres baseline = lowest + engraver.length(under_notes) +
                                 units::in_millimetres(engraver.figure_style().size) * numeral_height;
    bool figures = false;
    engraver.draw_staff(page, staff);
    engraver.draw_clef(page, staff, top_left.x + engraver.length(inset));
    engraver.draw_key(page, staff, line.key,
                      top_left.x + engraver.length(inset + after_clef) + engraver.clef_width(line.clef));
    for (std::size_t i = 0; i < line.events.size(); ++i) {
        const Event& event = line.events[i];
        if (const auto* note = std::get_if<LineNote>(&event)) {
            engraver.draw_note(page, staff, note_of(*note, accidentals[i]), anchors[i]);
            if (note->figure.empty()) continue;
            engraver.draw_figure(page, note->figure, {anchors[i], baseline});
            figures = true;
        } else if (const auto* rest = std::get_if<Rest>(&event)) {
            engraver.draw_rest(page, staff, rest->duration,
                               anchors[i] - engraver.rest_width(rest->duration) / 2.0);
        } else {
            const BarLine kind = std::get<BarLine>(event);
            engraver.draw_bar_line(page, staff, kind, anchors[i] - engraver.bar_line_width(kind) / 2.0);
        }
    }
    return figures ? baseline : lowest;
}

}  // namespace lowledger::engraving
