#include "reports/engraving/music_line.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "model/units/number_text.h"
#include "model/units/refusal.h"
#include "reports/engraving/ink.h"
#include "reports/engraving/music_system.h"
#include "reports/engraving/spacing.h"

namespace lowledger::engraving {
namespace {

using units::Millimetres;

/// How far apart notes stand that have all the room they like.
constexpr double comfortable_stretch = 1.45;
/// A last system is not stretched further.
constexpr double widest_last_stretch = 2.2;

/// Where a system may end: one past an event, and at what cost.
struct Break {
    std::size_t at = 0;
    double cost = 0.0;
};

std::vector<Break> breaks_of(const MusicLine& line) {
    constexpr double within_bar = 100.0;
    std::vector<bool> beamed_on(line.events.size(), false);
    for (const BeamGroup& group : beam_groups(line)) {
        for (std::size_t i = 0; i + 1 < group.size(); ++i)
            beamed_on.at(group[i]) = true;
    }
    std::vector<Break> breaks = {{0, 0.0}};
    for (std::size_t i = 0; i < line.events.size(); ++i) {
        const auto* bar = std::get_if<BarLine>(&line.events[i]);
        const bool last = i + 1 == line.events.size();
        const bool bar_follows = !last && std::holds_alternative<BarLine>(line.events[i + 1]);
        if (last || (bar != nullptr && *bar != BarLine::repeat_starts && !bar_follows)) {
            breaks.push_back({i + 1, 0.0});
        } else if (bar == nullptr && !bar_follows && !beamed_on[i]) {
            breaks.push_back({i + 1, within_bar});
        }
    }
    return breaks;
}

/// A line with all that does not depend on where it is broken.
struct Material {
    const Engraver& engraver;
    const MusicLine& line;
    std::vector<Note> notes;
    std::vector<Column> columns;

    Material(const Engraver& e, const MusicLine& l)
        : engraver(e), line(l), notes(notes_of(l)), columns(columns_of(e, l, notes)) {}

    [[nodiscard]] std::vector<Column> slice(std::size_t begin, std::size_t end) const {
        const auto at = [&](std::size_t i) { return columns.begin() + static_cast<std::ptrdiff_t>(i); };
        return {at(begin), at(end)};
    }
    /// From the staff's left end to the first ink and from the last ink to its right end.
    [[nodiscard]] Millimetres around(std::size_t begin, std::size_t end) const {
        return start_of_system(engraver, line, begin) + end_of_system(engraver, line, begin, end);
    }
    [[nodiscard]] Millimetres width(std::size_t begin, std::size_t end, double stretch) const {
        return around(begin, end) + engraver.length(width_of(slice(begin, end), stretch));
    }
};

/// How badly a slice fills a staff; empty if it does not fit.
std::optional<double> cost_of(const Material& material, std::size_t begin, std::size_t end,
                              Millimetres width) {
    constexpr double per_system = 0.02;
    if (material.width(begin, end, 0.0) > width) return std::nullopt;
    const double fill = std::log(width / material.width(begin, end, comfortable_stretch));
    const bool last = end == material.line.events.size();
    return per_system + (last && fill > 0.0 ? 0.0 : fill * fill);
}

/// Begins of the systems and the end of the last, by the least sum of costs; empty if nothing fits.
std::vector<std::size_t> broken(const Material& material, Millimetres width) {
    const std::vector<Break> breaks = breaks_of(material.line);
    constexpr double never = std::numeric_limits<double>::max();
    std::vector<double> best(breaks.size(), never);
    std::vector<std::size_t> from(breaks.size(), 0);
    best[0] = 0.0;
    for (std::size_t to = 1; to < breaks.size(); ++to) {
        // Back from the nearest: once a slice is too wide, so is every longer one.
        for (std::size_t back = to; back > 0; --back) {
            const std::size_t begin = back - 1;
            const auto cost = cost_of(material, breaks[begin].at, breaks[to].at, width);
            if (!cost) break;
            if (best[begin] == never) continue;
            const double sum = best[begin] + *cost + breaks[to].cost;
            if (sum < best[to]) {
                best[to] = sum;
                from[to] = begin;
            }
        }
    }
    if (best.back() == never) return {};
    std::vector<std::size_t> ends;
    for (std::size_t at = breaks.size() - 1; at > 0; at = from[at])
        ends.push_back(breaks[at].at);
    ends.push_back(0);
    std::reverse(ends.begin(), ends.end());
    return ends;
}

SystemPlan plan_of(const Material& material, std::size_t begin, std::size_t end, Millimetres width) {
    const bool last = end == material.line.events.size();
    const std::vector<Column> columns = material.slice(begin, end);
    const StaffSpaces room((width - material.around(begin, end)) / material.engraver.space());
    SystemPlan plan{begin, end, stretch_to_fill(columns, room), width};
    if (last && plan.stretch > widest_last_stretch) {
        plan.stretch = widest_last_stretch;
        plan.staff_width = std::min(width, material.width(begin, end, plan.stretch));
    }
    return plan;
}

}  // namespace

Millimetres narrowest_width(const Engraver& engraver, const MusicLine& line) {
    const Material material(engraver, line);
    const std::vector<Break> breaks = breaks_of(line);
    Millimetres widest = material.width(0, 0, 0.0);
    for (std::size_t i = 1; i < breaks.size(); ++i)
        widest = std::max(widest, material.width(breaks[i - 1].at, breaks[i].at, 0.0));
    return widest;
}

std::vector<EngravedSystem> engrave(const Engraver& engraver, const MusicLine& line, Millimetres width) {
    const Millimetres narrowest = narrowest_width(engraver, line);
    if (width < narrowest) {
        throw units::Refusal("This line of music needs a staff of " +
                             units::decimal_text(narrowest.value(), 0) + " mm and has " +
                             units::decimal_text(width.value(), 0) + " mm; use a smaller staff.");
    }
    const Material material(engraver, line);
    if (line.events.empty()) return {engrave_system(engraver, line, {}, {}, {0, 0, 1.0, width})};
    const std::vector<std::size_t> ends = broken(material, width);
    std::vector<EngravedSystem> systems;
    for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
        const SystemPlan plan = plan_of(material, ends[i], ends[i + 1], width);
        systems.push_back(
            engrave_system(engraver, line, material.notes, material.slice(plan.begin, plan.end), plan));
    }
    return systems;
}

Millimetres system_gap(const Engraver& engraver) {
    constexpr StaffSpaces gap{3.0};
    return engraver.length(gap);
}

void place(canvas::Page& page, const EngravedSystem& system, const canvas::Point& staff_top_left) {
    for (const canvas::Item& item : system.items)
        page.items.push_back(moved(item, staff_top_left));
}

Millimetres draw_music(canvas::Page& page, const Engraver& engraver, const MusicLine& line,
                       const canvas::Point& top_left, Millimetres width) {
    Millimetres y = top_left.y - system_gap(engraver);
    for (const EngravedSystem& system : engrave(engraver, line, width)) {
        y += system_gap(engraver) - system.top;
        place(page, system, {top_left.x, y});
        y += system.bottom;
    }
    return y;
}

}  // namespace lowledger::engraving
