#include "reports/engraving/line_curves.h"

#include <algorithm>
#include <optional>

#include "reports/engraving/curves.h"

namespace lowledger::engraving {
namespace {

using canvas::Point;
using units::Millimetres;

constexpr StaffSpaces curve_thickness{0.25};
/// From the first ink to a curve that comes from the system before.
constexpr StaffSpaces before_first{1.2};
constexpr StaffSpaces before_end{0.3};

Millimetres left_end(const Engraver& engraver, const LineSetting& setting) {
    const std::size_t first = setting.begin();
    Millimetres ink(0.0);
    if (setting.line_note(first) != nullptr) {
        ink = engraver.note_extent(setting.line().clef, setting.note(first)).left;
    }
    return setting.anchor(first) - ink - engraver.length(before_first);
}

Millimetres right_end(const Engraver& engraver, const LineSetting& setting) {
    return setting.staff.width - engraver.length(before_end);
}

std::optional<std::size_t> next_note(const LineSetting& setting, std::size_t event) {
    for (std::size_t i = event + 1; i < setting.line().events.size(); ++i) {
        if (setting.line_note(i) != nullptr) return i;
    }
    return std::nullopt;
}

bool stem_up(const Engraver& engraver, const LineSetting& setting, std::size_t event) {
    return engraver.stem_of(setting.line().clef, setting.note(event)).up;
}

void draw_tie(const Engraver& engraver, LineSetting& setting, std::size_t from, std::size_t to) {
    constexpr StaffSpaces clear{0.15};
    constexpr StaffSpaces beside_middle{0.45};
    const std::size_t shown = setting.has(from) ? from : to;
    const bool above = !stem_up(engraver, setting, from);
    const Note& note = setting.note(shown);
    const Millimetres y = engraver.y_of(setting.staff, engraver.position_of(setting.line().clef, note)) +
                          engraver.length(above ? -beside_middle : beside_middle);
    Millimetres left = left_end(engraver, setting);
    if (setting.has(from)) {
        const Note& first = setting.note(from);
        left = setting.anchor(from) + engraver.head_width(first.duration) / 2.0 + engraver.length(clear);
        if (first.dots > 0)
            left = setting.anchor(from) + engraver.dot_right(setting.line().clef, first) +
                   engraver.length(clear);
    }
    Millimetres right = right_end(engraver, setting);
    if (setting.has(to)) {
        right = setting.anchor(to) - engraver.head_width(setting.note(to).duration) / 2.0 -
                engraver.length(clear);
    }
    constexpr double height_share = 0.12;
    const Millimetres height = std::clamp((right - left) * height_share, engraver.length(StaffSpaces(0.45)),
                                          engraver.length(StaffSpaces(1.0)));
    setting.page.items.emplace_back(
        curve_shape({{left, y}, {right, y}, height, above}, engraver.length(curve_thickness), "tie"));
}

/// Above or below the note's head, or its stem's tip.
Point slur_tip(const Engraver& engraver, const LineSetting& setting, std::size_t event, bool above) {
    constexpr StaffSpaces gap{0.4};
    const Millimetres x = setting.anchor(event);
    const Millimetres half = engraver.head_width(setting.note(event).duration) / 2.0;
    const Millimetres head =
        engraver.y_of(setting.staff, engraver.position_of(setting.line().clef, setting.note(event)));
    const Millimetres edge = above ? setting.ink.top(x - half, x + half).value_or(head)
                                   : setting.ink.bottom(x - half, x + half).value_or(head);
    return {x, edge + engraver.length(above ? -gap : gap)};
}

bool slur_goes_above(const Engraver& engraver, const LineSetting& setting, std::size_t from, std::size_t to) {
    for (std::size_t i = from; i <= to; ++i) {
        if (setting.line_note(i) != nullptr && !stem_up(engraver, setting, i)) return true;
    }
    return false;
}

/// Tips at least so level that the slur does not climb one in two.
void level(Curve& slur) {
    constexpr double steepest = 0.5;
    const Millimetres most = (slur.to.x - slur.from.x) * steepest;
    const double outward = slur.above ? -1.0 : 1.0;
    const Millimetres rise = (slur.to.y - slur.from.y) * outward;
    if (rise > most) slur.from.y += (rise - most) * outward;
    if (-rise > most) slur.to.y += (-rise - most) * outward;
}

void draw_slur(const Engraver& engraver, LineSetting& setting, std::size_t from, std::size_t to) {
    constexpr double height_share = 0.08;
    Curve slur;
    slur.above = slur_goes_above(engraver, setting, from, to);
    const bool starts = setting.has(from);
    const bool ends = setting.has(to);
    if (starts) slur.from = slur_tip(engraver, setting, from, slur.above);
    if (ends) slur.to = slur_tip(engraver, setting, to, slur.above);
    if (!starts) slur.from = {left_end(engraver, setting), slur.to.y};
    if (!ends) slur.to = {right_end(engraver, setting), slur.from.y};
    if (!starts && !ends) {
        const Millimetres edge = slur.above ? setting.staff.top_left.y : engraver.staff_height();
        slur.from.y = slur.to.y = edge;
    }
    level(slur);
    slur.height = std::clamp((slur.to.x - slur.from.x) * height_share + engraver.length(StaffSpaces(0.4)),
                             engraver.length(StaffSpaces(0.7)), engraver.length(StaffSpaces(1.8)));
    slur = slur_clear_of(setting.ink, slur, engraver.space(), engraver.length(StaffSpaces(0.3)));
    setting.page.items.emplace_back(curve_shape(slur, engraver.length(curve_thickness), "slur"));
}

}  // namespace

void draw_curves(const Engraver& engraver, LineSetting& setting) {
    if (setting.begin() == setting.end()) return;
    const auto shows = [&](std::size_t from, std::size_t to) {
        return from < setting.end() && to >= setting.begin();
    };
    std::optional<std::size_t> slur_from;
    std::vector<std::pair<std::size_t, std::size_t>> slurs;
    for (std::size_t i = 0; i < setting.line().events.size(); ++i) {
        const LineNote* note = setting.line_note(i);
        if (note == nullptr) continue;
        const auto next = note->tied ? next_note(setting, i) : std::nullopt;
        if (next && shows(i, *next)) draw_tie(engraver, setting, i, *next);
        if (note->slur_starts) slur_from = i;
        if (note->slur_ends && slur_from && shows(*slur_from, i)) slurs.emplace_back(*slur_from, i);
    }
    setting.take_in();
    for (const auto& [from, to] : slurs)
        draw_slur(engraver, setting, from, to);
    setting.take_in();
}

}  // namespace lowledger::engraving
