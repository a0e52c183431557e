#include "reports/engraving/beaming.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>

namespace lowledger::engraving {
namespace {

constexpr double quarter_beat = 2.0;
constexpr double dotted_beat = 3.0;
constexpr double half_bar = 4.0;

/// An eighth, or where one cannot be beamed.
struct Place {
    std::size_t event = 0;
    /// Eighths from the bar's begin.
    double at = 0.0;
    bool eighth = false;
};

TimeSignature time_of(const MusicLine& line) {
    return line.time.value_or(TimeSignature{4, 4});
}

bool is_eighth(const Event& event) {
    const auto* note = std::get_if<LineNote>(&event);
    return note != nullptr && note->duration == Duration::eighth && note->dots == 0;
}

double eighths_of(const Event& event) {
    if (const auto* note = std::get_if<LineNote>(&event)) {
        return engraving::eighths_of(note->duration, note->dots);
    }
    if (const auto* rest = std::get_if<Rest>(&event))
        return engraving::eighths_of(rest->duration, rest->dots);
    return 0.0;
}

/// Which beat, or half bar, a place belongs to.
int part_of(double at, double length) {
    return static_cast<int>(std::floor(at / length + 1e-9));
}

void group_runs(const std::vector<Place>& bar, double length, std::vector<BeamGroup>& groups) {
    BeamGroup run;
    int part = -1;
    const auto finish = [&] {
        if (run.size() > 1) groups.push_back(run);
        run.clear();
    };
    for (const Place& place : bar) {
        if (!place.eighth || part_of(place.at, length) != part) finish();
        part = part_of(place.at, length);
        if (place.eighth) run.push_back(place.event);
    }
    finish();
}

void group_bar(const std::vector<Place>& bar, const TimeSignature& time, std::vector<BeamGroup>& groups) {
    if (time.unit == 8 && time.beats % 3 == 0) {
        group_runs(bar, dotted_beat, groups);
        return;
    }
    const bool halves = time.unit == 4 && time.beats % 2 == 0;
    std::vector<Place> rest_of_bar;
    for (auto from = bar.begin(); from != bar.end();) {
        const auto to = std::find_if(from, bar.end(), [&](const Place& p) {
            return part_of(p.at, half_bar) != part_of(from->at, half_bar);
        });
        const bool whole_half =
            halves && to - from == 4 && std::all_of(from, to, [](const Place& p) { return p.eighth; });
        const std::vector<Place> part(from, to);
        group_runs(part, whole_half ? half_bar : quarter_beat, groups);
        from = to;
    }
}

double height(StaffPosition position) {
    return position.half_spaces / 2.0;
}

/// Rise from the first to the last stem.
double slant_of(const std::vector<BeamedNote>& notes, bool up) {
    constexpr std::array<double, 6> by_interval = {0.0, 0.25, 0.5, 0.75, 1.0, most_beam_slant.value()};
    constexpr double steepest = 0.25;
    const double first = height(notes.front().position);
    const double last = height(notes.back().position);
    for (std::size_t i = 1; i + 1 < notes.size(); ++i) {
        const double inner = height(notes[i].position);
        if (up ? inner > std::max(first, last) - 1e-9 : inner < std::min(first, last) + 1e-9) return 0.0;
    }
    const auto interval = static_cast<std::size_t>(std::lround(std::abs(last - first) * 2.0));
    const double width = (notes.back().x - notes.front().x).value();
    const double allowed = std::floor(std::max(width * steepest, 0.0) * 4.0) / 4.0;
    const double rise = std::min(by_interval.at(std::min(interval, by_interval.size() - 1)), allowed);
    return last < first ? -rise : rise;
}

/// A beam whose middle lies in the middle of a space leaves a thin wedge of white on both sides.
bool leaves_wedge(double outer, bool up) {
    const double middle = outer + (up ? -0.5 : 0.5) * beam_thickness.value();
    const bool on_staff = middle > 0.0 && middle < 4.0;
    return on_staff && std::abs(middle - std::floor(middle) - 0.5) < 0.01;
}

}  // namespace

std::vector<BeamGroup> beam_groups(const MusicLine& line) {
    std::vector<BeamGroup> groups;
    std::vector<Place> bar;
    double at = 0.0;
    bool first = true;
    const TimeSignature time = time_of(line);
    const auto finish = [&] {
        // A pick-up ends with its bar, it does not begin one.
        const double missing = engraving::eighths_of(time) - at;
        if (first && line.time && missing > 0.0) {
            for (Place& place : bar)
                place.at += missing;
        }
        if (at > 0.0) first = false;
        group_bar(bar, time, groups);
        bar.clear();
        at = 0.0;
    };
    for (std::size_t i = 0; i < line.events.size(); ++i) {
        if (std::holds_alternative<BarLine>(line.events[i])) {
            finish();
            continue;
        }
        bar.push_back({i, at, is_eighth(line.events[i])});
        at += eighths_of(line.events[i]);
    }
    finish();
    return groups;
}

bool beamed_stems_go_up(const std::vector<StaffPosition>& notes) {
    int highest = 0;
    int lowest = 0;
    int sum = 0;
    for (const StaffPosition& note : notes) {
        const int above = note.half_spaces - middle_line.half_spaces;
        highest = std::max(highest, above);
        lowest = std::min(lowest, above);
        sum += above;
    }
    if (highest != -lowest) return highest < -lowest;
    return sum < 0;
}

Beam beam_over(const std::vector<BeamedNote>& notes) {
    constexpr double usual_stem = 3.25;
    constexpr double step = 0.25;
    constexpr int most_steps = 4;
    std::vector<StaffPosition> positions;
    positions.reserve(notes.size());
    for (const BeamedNote& note : notes)
        positions.push_back(note.position);
    const bool up = beamed_stems_go_up(positions);
    const double away = up ? 1.0 : -1.0;
    const double rise = slant_of(notes, up);
    const StaffSpaces width = notes.back().x - notes.front().x;
    // The beam's start, measured away from the heads, so that every stem is long enough.
    double start = -1e9;
    for (std::size_t i = 0; i < notes.size(); ++i) {
        const bool outer = i == 0 || i + 1 == notes.size();
        const double least = outer ? usual_stem : shortest_beamed_stem.value();
        const double needed = std::max(away * height(notes[i].position) + least, away * height(middle_line));
        const double share = width > StaffSpaces(0.0) ? (notes[i].x - notes.front().x) / width : 0.0;
        start = std::max(start, needed - away * rise * share);
    }
    start = std::ceil(start / step - 1e-9) * step;
    for (int i = 0; i < most_steps; ++i) {
        const double at = away * (start + step * i);
        if (!leaves_wedge(at, up) && !leaves_wedge(at + rise, up)) {
            return {up, StaffSpaces(at), StaffSpaces(at + rise)};
        }
    }
    return {up, StaffSpaces(away * start), StaffSpaces(away * start + rise)};
}

}  // namespace lowledger::engraving
