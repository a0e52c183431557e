#include "reports/engraving/music_system.h"

#include <algorithm>
#include <utility>

#include "reports/engraving/ink.h"
#include "reports/engraving/line_curves.h"
#include "reports/engraving/line_marks.h"
#include "reports/engraving/line_setting.h"

namespace lowledger::engraving {
namespace {

using units::Millimetres;

constexpr StaffSpaces inset{0.6};
constexpr StaffSpaces after_clef{0.8};
constexpr StaffSpaces after_key{0.9};
constexpr StaffSpaces before_notes{1.5};
constexpr StaffSpaces after_last_note{1.5};

void draw_head(const Engraver& engraver, LineSetting& setting) {
    const MusicLine& line = setting.line();
    Millimetres x = engraver.length(inset);
    engraver.draw_clef(setting.page, setting.staff, x);
    x += engraver.clef_width(line.clef);
    if (line.key.fifths != 0) {
        x += engraver.length(after_clef);
        engraver.draw_key(setting.page, setting.staff, line.key, x);
        x += engraver.key_width(line.key);
    }
    if (line.time && setting.begin() == 0) {
        engraver.draw_time(setting.page, setting.staff, *line.time, x + engraver.length(after_key));
    }
}

canvas::Shape beam_shape(const Engraver& engraver, const LineSetting& setting, const Beam& beam,
                         Millimetres left, Millimetres right) {
    const Millimetres bottom = engraver.y_of(setting.staff, bottom_line);
    const StaffSpaces inward = beam.up ? -beam_thickness : beam_thickness;
    const Millimetres start = bottom - engraver.length(beam.start);
    const Millimetres end = bottom - engraver.length(beam.end);
    const Millimetres thick = engraver.length(inward);
    canvas::Shape shape;
    shape.name = "beam";
    shape.steps = {canvas::MoveTo{{left, start}}, canvas::LineTo{{right, end}},
                   canvas::LineTo{{right, end - thick}}, canvas::LineTo{{left, start - thick}},
                   canvas::Close{}};
    return shape;
}

/// Gives the notes of a group their stems and draws the beam.
void draw_beam(const Engraver& engraver, LineSetting& setting, const BeamGroup& group) {
    std::vector<BeamedNote> beamed;
    for (const std::size_t i : group) {
        const Note& note = setting.note(i);
        const Millimetres x = setting.anchor(i) + engraver.stem_offset(note.duration, note.stem->up);
        beamed.push_back(
            {StaffSpaces(x / engraver.space()), engraver.position_of(setting.line().clef, note)});
    }
    const Beam beam = beam_over(beamed);
    const StaffSpaces width = beamed.back().x - beamed.front().x;
    // Stems end inside the beam, so that no corner of theirs stands out of its slanted edge.
    constexpr StaffSpaces hidden{0.1};
    for (std::size_t i = 0; i < group.size(); ++i) {
        const double share = (beamed[i].x - beamed.front().x) / width;
        const StaffSpaces edge = beam.start + (beam.end - beam.start) * share;
        const StaffSpaces head(beamed[i].position.half_spaces / 2.0);
        setting.note(group[i]).stem = Stem{beam.up, abs(edge - head) - hidden, false};
    }
    const Millimetres half_stem = engraver.stem_width_on_page() / 2.0;
    setting.page.items.emplace_back(beam_shape(engraver, setting, beam,
                                               engraver.length(beamed.front().x) - half_stem,
                                               engraver.length(beamed.back().x) + half_stem));
}

/// A whole rest that is alone between two bar lines stands in their middle.
Millimetres rest_middle(const LineSetting& setting, std::size_t i) {
    const auto bar_at = [&](std::size_t at) {
        return setting.has(at) && std::holds_alternative<BarLine>(setting.line().events[at]);
    };
    const bool whole = std::get<Rest>(setting.line().events[i]).duration == Duration::whole;
    if (!whole || i == 0 || !bar_at(i - 1) || !bar_at(i + 1)) return setting.anchor(i);
    return (setting.anchor(i - 1) + setting.anchor(i + 1)) / 2.0;
}

void draw_notes_and_rests(const Engraver& engraver, LineSetting& setting) {
    for (const BeamGroup& group : beam_groups(setting.line())) {
        if (setting.has(group.front())) draw_beam(engraver, setting, group);
    }
    for (std::size_t i = setting.begin(); i < setting.end(); ++i) {
        const Event& event = setting.line().events[i];
        if (std::holds_alternative<LineNote>(event)) {
            engraver.draw_note(setting.page, setting.staff, setting.note(i), setting.anchor(i));
        } else if (const auto* rest = std::get_if<Rest>(&event)) {
            engraver.draw_rest(
                setting.page, setting.staff, rest->duration,
                rest_middle(setting, i) - engraver.rest_width(rest->duration, rest->dots) / 2.0, rest->dots);
        }
    }
}

void draw_bar_lines(const Engraver& engraver, LineSetting& setting) {
    for (std::size_t i = setting.begin(); i < setting.end(); ++i) {
        if (const auto* kind = std::get_if<BarLine>(&setting.line().events[i])) {
            engraver.draw_bar_line(setting.page, setting.staff, *kind,
                                   setting.anchor(i) - engraver.bar_line_width(*kind) / 2.0);
        }
    }
}

}  // namespace

Millimetres start_of_system(const Engraver& engraver, const MusicLine& line, std::size_t begin) {
    Millimetres start = engraver.length(inset + before_notes) + engraver.clef_width(line.clef);
    if (line.key.fifths != 0) start += engraver.length(after_clef) + engraver.key_width(line.key);
    if (line.time && begin == 0) start += engraver.length(after_key) + engraver.time_width(*line.time);
    return start;
}

Millimetres end_of_system(const Engraver& engraver, const MusicLine& line, std::size_t begin,
                          std::size_t end) {
    const bool ends_with_bar = end > begin && std::holds_alternative<BarLine>(line.events[end - 1]);
    return ends_with_bar ? Millimetres(0.0) : engraver.length(after_last_note);
}

EngravedSystem engrave_system(const Engraver& engraver, const MusicLine& line, const std::vector<Note>& notes,
                              const std::vector<Column>& columns, const SystemPlan& plan) {
    std::vector<Millimetres> anchors;
    if (!columns.empty()) {
        anchors.push_back(start_of_system(engraver, line, plan.begin) +
                          engraver.length(columns.front().left));
        for (const StaffSpaces step : advances(columns, plan.stretch))
            anchors.push_back(anchors.back() + engraver.length(step));
    }
    LineSetting setting(line, notes, std::move(anchors), plan);
    engraver.draw_staff(setting.page, setting.staff);
    setting.pass_over();
    draw_head(engraver, setting);
    draw_notes_and_rests(engraver, setting);
    setting.take_in();
    draw_curves(engraver, setting);
    draw_bar_lines(engraver, setting);
    setting.take_in();
    draw_marks(engraver, setting);
    EngravedSystem system{std::move(setting.page.items), plan.staff_width, {}, {}};
    for (const canvas::Item& item : system.items) {
        const canvas::Box box = ink_of(item);
        system.top = std::min(system.top, box.top);
        system.bottom = std::max(system.bottom, box.bottom());
    }
    return system;
}

}  // namespace lowledger::engraving
