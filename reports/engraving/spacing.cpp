#include "reports/engraving/spacing.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace lowledger::engraving {
namespace {

using units::Millimetres;

constexpr StaffSpaces between{0.35};
constexpr StaffSpaces around_bar_line{0.8};
constexpr StaffSpaces under_gap{0.6};
constexpr StaffSpaces shortest_tie{1.3};
/// With the white at its ends and half of the dynamic after it.
constexpr StaffSpaces shortest_hairpin{4.0};

/// Space after a duration, an eighth's being 2: by the square root of the duration.
StaffSpaces natural_space(Duration duration, int dots) {
    constexpr StaffSpaces eighth{2.0};
    return eighth * std::sqrt(eighths_of(duration, dots));
}

StaffSpaces in_spaces(const Engraver& engraver, Millimetres length) {
    return StaffSpaces(length / engraver.space());
}

StaffSpaces half_under(const Engraver& engraver, const LineNote& note) {
    Millimetres width = engraver.faces().width(note.figure, engraver.figure_style());
    if (note.tendency) width = std::max(width, engraver.tendency_size(*note.tendency).width);
    if (note.dynamic) width = std::max(width, engraver.dynamic_width(*note.dynamic));
    return in_spaces(engraver, width / 2.0);
}

Column column_of(const Engraver& engraver, horns::Clef clef, const LineNote& line_note, const Note& note) {
    Column column;
    const Extent extent = engraver.note_extent(clef, note);
    column.left = in_spaces(engraver, extent.left);
    column.right = in_spaces(engraver, extent.right);
    column.natural = natural_space(note.duration, note.dots);
    column.half_under = half_under(engraver, line_note);
    if (line_note.tied) column.clear_after = shortest_tie;
    return column;
}

/// From anchor to anchor at the least, for ink on the staff.
StaffSpaces least_advance(const Column& from, const Column& to) {
    const bool at_bar = from.bar_line || to.bar_line;
    return from.right + to.left + std::max(at_bar ? around_bar_line : between, from.clear_after);
}

/// A hairpin that is over before the next note stands between the two; a longer one takes no room of its own.
StaffSpaces room_for_hairpin(const Engraver& engraver, const MusicLine& line, std::size_t event) {
    const auto& note = std::get<LineNote>(line.events[event]);
    if (!note.hairpin) return StaffSpaces(0.0);
    const auto next =
        std::find_if(line.events.begin() + static_cast<std::ptrdiff_t>(event) + 1, line.events.end(),
                     [](const Event& e) { return std::holds_alternative<LineNote>(e); });
    if (next != line.events.end()) {
        const auto& stop = std::get<LineNote>(*next);
        if (!stop.dynamic && !stop.hairpin) return StaffSpaces(0.0);
    }
    StaffSpaces half;
    if (note.dynamic) half = in_spaces(engraver, engraver.dynamic_width(*note.dynamic) / 2.0);
    return half + shortest_hairpin;
}

}  // namespace

std::vector<AccidentalMark> accidentals_of(const MusicLine& line) {
    std::vector<AccidentalMark> marks;
    std::map<int, int> in_bar;
    bool tied = false;
    for (const Event& event : line.events) {
        AccidentalMark mark = AccidentalMark::hidden;
        if (std::holds_alternative<BarLine>(event)) in_bar.clear();
        if (const auto* note = std::get_if<LineNote>(&event)) {
            const auto [known, is_new] = in_bar.try_emplace(note->spelling.diatonic_step(),
                                                            alteration_in(line.key, note->spelling.letter));
            if (tied) {
                // It holds for its own length alone: the next such note says its accidental again.
                if (is_new) in_bar.erase(known);
            } else {
                if (known->second != note->spelling.alteration) mark = AccidentalMark::always;
                known->second = note->spelling.alteration;
            }
            tied = note->tied;
        }
        marks.push_back(mark);
    }
    return marks;
}

std::vector<Note> notes_of(const MusicLine& line) {
    const std::vector<AccidentalMark> accidentals = accidentals_of(line);
    std::vector<Note> notes(line.events.size());
    for (std::size_t i = 0; i < notes.size(); ++i) {
        const auto* note = std::get_if<LineNote>(&line.events[i]);
        if (note == nullptr) continue;
        const bool low = reads_better_8va_bassa(position_of(line.clef, note->spelling));
        notes[i] = {note->spelling, note->duration, accidentals[i], low, note->dots, std::nullopt};
    }
    for (const BeamGroup& group : beam_groups(line)) {
        std::vector<StaffPosition> positions;
        for (const std::size_t i : group) {
            const StaffPosition sounding = position_of(line.clef, notes[i].spelling);
            positions.push_back({sounding.half_spaces + (notes[i].octave_up ? 7 : 0)});
        }
        const bool up = beamed_stems_go_up(positions);
        for (std::size_t i = 0; i < group.size(); ++i)
            notes[group[i]].stem = Stem{up, stem_length(positions[i]), false};
    }
    return notes;
}

std::vector<Column> columns_of(const Engraver& engraver, const MusicLine& line,
                               const std::vector<Note>& notes) {
    std::vector<Column> columns;
    for (std::size_t i = 0; i < line.events.size(); ++i) {
        const Event& event = line.events[i];
        Column column;
        if (const auto* note = std::get_if<LineNote>(&event)) {
            column = column_of(engraver, line.clef, *note, notes[i]);
            column.clear_after = std::max(column.clear_after, room_for_hairpin(engraver, line, i));
        } else if (const auto* rest = std::get_if<Rest>(&event)) {
            column.left = column.right =
                in_spaces(engraver, engraver.rest_width(rest->duration, rest->dots) / 2.0);
            column.natural = natural_space(rest->duration, rest->dots);
        } else {
            const Millimetres width = engraver.bar_line_width(std::get<BarLine>(event));
            column.left = column.right = in_spaces(engraver, width / 2.0);
            column.bar_line = true;
        }
        columns.push_back(column);
    }
    return columns;
}

std::vector<StaffSpaces> advances(const std::vector<Column>& columns, double stretch) {
    std::vector<StaffSpaces> result;
    StaffSpaces since_under;
    StaffSpaces half_under;
    for (std::size_t i = 0; i + 1 < columns.size(); ++i) {
        if (columns[i].half_under > StaffSpaces(0.0)) {
            half_under = columns[i].half_under;
            since_under = StaffSpaces(0.0);
        }
        const Column& next = columns[i + 1];
        StaffSpaces step = std::max(least_advance(columns[i], next), columns[i].natural * stretch);
        // A sign may be wider than its note and meet another over events that have none.
        if (half_under > StaffSpaces(0.0) && next.half_under > StaffSpaces(0.0)) {
            step = std::max(step, half_under + next.half_under + under_gap - since_under);
        }
        since_under += step;
        result.push_back(step);
    }
    return result;
}

StaffSpaces width_of(const std::vector<Column>& columns, double stretch) {
    if (columns.empty()) return StaffSpaces(0.0);
    const std::vector<StaffSpaces> steps = advances(columns, stretch);
    return std::accumulate(steps.begin(), steps.end(), columns.front().left + columns.back().right);
}

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

}  // namespace lowledger::engraving
