#include <algorithm>

#include "reports/canvas/text_block.h"
#include "reports/charts/lean_chart.h"
#include "reports/engraving/engraver.h"
#include "reports/pages/chart_notes.h"
#include "reports/pages/handout_parts.h"
#include "reports/pages/watch_list.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using canvas::Box;
using canvas::Point;
using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr auto staff_space = 1.3_mm;
constexpr auto key_gap = 1.5_mm;
constexpr auto tallest_chart = 75_mm;
constexpr auto label_width = 15_mm;
constexpr auto group_gap = 1.2_mm;

Millimetres draw_heading(const Sheet& sheet, Sentence heading, Point top_left, Millimetres width) {
    return canvas::draw_block(sheet.page, sheet.faces, sheet.words.say(heading), type::heading, top_left,
                              width) +
           0.5_mm;
}

charts::LeanChart chart_of(const HandoutInputs& inputs, std::size_t most) {
    charts::LeanChart chart;
    chart.clef = note_style(inputs).reader.clef;
    chart.notes = chart_notes(inputs, most);
    chart.tolerance = inputs.answer.remains.tolerance;
    return chart;
}

/// How to read the chart, and what it rests on.
std::string chart_key(const Sheet& sheet, const HandoutInputs& inputs) {
    const auto& words = sheet.words;
    const auto& profile = inputs.answer.profile;
    const bool with_after = inputs.answer.enough.tuning_notes_in();
    std::string key = words.say(with_after ? Sentence::chart_key : Sentence::chart_key_before);
    const auto notes = chart_notes(inputs, most_by_name);
    if (std::any_of(notes.begin(), notes.end(), [](const auto& note) { return !note.measured; })) {
        key += " " + words.say(Sentence::chart_pale);
    }
    const std::string sheets =
        words.say_counted(Sentence::sheets_one, Sentence::sheets_many, profile.sheets_used);
    const std::string readings =
        words.say_counted(Sentence::readings_one, Sentence::readings_many, profile.takes_used);
    return key + " " + words.say(Sentence::chart_from, {{"sheets", sheets}, {"readings", readings}});
}

Millimetres key_height(const Sheet& sheet, const HandoutInputs& inputs, Millimetres width) {
    return canvas::block_height(sheet.faces, chart_key(sheet, inputs), type::small, width) + key_gap;
}

Millimetres group_height(const Sheet& sheet, const WatchGroup& group, Millimetres width) {
    return canvas::block_height(sheet.faces, group.text, type::body, width - label_width) + group_gap;
}

Millimetres groups_height(const Sheet& sheet, const std::vector<WatchGroup>& groups, Millimetres width) {
    Millimetres height;
    for (const WatchGroup& group : groups)
        height += group_height(sheet, group, width);
    return height;
}

/// With as many notes as stand on one system.
charts::LeanChart shortest_chart(const engraving::Engraver& engraver, const HandoutInputs& inputs,
                                 Millimetres width) {
    std::size_t most = most_by_name;
    auto chart = chart_of(inputs, most);
    while (most > 1 && charts::systems_needed(engraver, chart, width) > 1)
        chart = chart_of(inputs, --most);
    return chart;
}

std::string none_to_watch(const Sheet& sheet, const HandoutInputs& inputs) {
    const int tolerance = words::whole_cents(inputs.answer.remains.tolerance);
    return sheet.words.say(Sentence::watch_none, {{"tolerance", std::to_string(tolerance)}});
}

/// As many notes by name as the height allows.
std::vector<WatchGroup> groups_that_fit(const Sheet& sheet, const HandoutInputs& inputs, Millimetres width,
                                        Millimetres height) {
    const auto speech = speech_of(inputs, sheet.words);
    for (std::size_t most = most_by_name; most > 1; --most) {
        auto groups = watch_groups(speech, inputs.answer.remains, most);
        if (groups_height(sheet, groups, width) <= height) return groups;
    }
    return watch_groups(speech, inputs.answer.remains, 1);
}

/// Of the band's note; on a trombone first where its positions are played.
std::string band_text(const HandoutInputs& inputs, const Sheet& sheet) {
    const words::Speech speech = speech_of(inputs, sheet.words);
    const std::string home = words::hand_slide_home_sentence(speech, inputs.answer.card);
    return home + (home.empty() ? "" : " ") + words::band_note_text(speech, *inputs.answer.card.band_note);
}

}  // namespace

Millimetres least_chart_height(const Sheet& sheet, const HandoutInputs& inputs, Millimetres width) {
    const engraving::Engraver engraver(sheet.faces, staff_space);
    const auto chart = shortest_chart(engraver, inputs, width);
    if (chart.notes.empty()) return 0_mm;
    return canvas::leading(type::heading) + 0.5_mm + charts::least_lean_chart_height(engraver, chart, width) +
           key_height(sheet, inputs, width);
}

Millimetres draw_chart(const Sheet& sheet, const HandoutInputs& inputs, const Box& place) {
    const engraving::Engraver engraver(sheet.faces, staff_space);
    auto chart = chart_of(inputs, most_by_name);
    if (chart.notes.empty()) return place.top;
    const Millimetres top =
        draw_heading(sheet, Sentence::chart_heading, {place.left, place.top}, place.width);
    const Millimetres room = place.bottom() - top - key_height(sheet, inputs, place.width);
    if (charts::least_lean_chart_height(engraver, chart, place.width) > room) {
        chart = shortest_chart(engraver, inputs, place.width);
    }
    const Millimetres height = std::max(charts::least_lean_chart_height(engraver, chart, place.width),
                                        std::min(room, tallest_chart));
    charts::draw_lean_chart(sheet.page, engraver, chart, {place.left, top, place.width, height});
    return canvas::draw_block(sheet.page, sheet.faces, chart_key(sheet, inputs), type::small,
                              {place.left, top + height + key_gap}, place.width);
}

Millimetres band_note_height(const Sheet& sheet, const HandoutInputs& inputs, Millimetres width) {
    if (!inputs.answer.card.band_note) return 0_mm;
    const std::string text = band_text(inputs, sheet);
    return canvas::leading(type::heading) + 0.5_mm +
           canvas::block_height(sheet.faces, text, type::body, width);
}

Millimetres draw_band_note(const Sheet& sheet, const HandoutInputs& inputs, Point top_left,
                           Millimetres width) {
    if (!inputs.answer.card.band_note) return top_left.y;
    const std::string text = band_text(inputs, sheet);
    const Millimetres y = draw_heading(sheet, Sentence::band_note_heading, top_left, width);
    return canvas::draw_block(sheet.page, sheet.faces, text, type::body, {top_left.x, y}, width);
}

Millimetres watch_list_height(const Sheet& sheet, const HandoutInputs& inputs, Millimetres width,
                              std::size_t most) {
    const Millimetres heading = canvas::leading(type::heading) + 0.5_mm;
    if (inputs.answer.remains.notes.empty()) {
        return heading + canvas::block_height(sheet.faces, none_to_watch(sheet, inputs), type::body, width);
    }
    const auto groups = watch_groups(speech_of(inputs, sheet.words), inputs.answer.remains, most);
    return heading + groups_height(sheet, groups, width) - group_gap;
}

Millimetres draw_watch_list(const Sheet& sheet, const HandoutInputs& inputs, const Box& place) {
    Millimetres y = draw_heading(sheet, Sentence::watch_heading, {place.left, place.top}, place.width);
    if (inputs.answer.remains.notes.empty()) {
        return canvas::draw_block(sheet.page, sheet.faces, none_to_watch(sheet, inputs), type::body,
                                  {place.left, y}, place.width);
    }
    std::string label;
    for (const WatchGroup& group : groups_that_fit(sheet, inputs, place.width, place.bottom() - y)) {
        if (group.label != label) {
            canvas::draw_text(sheet.page, sheet.faces, group.label, type::strong,
                              {place.left, y + canvas::ascent(type::strong)});
            label = group.label;
        }
        canvas::draw_block(sheet.page, sheet.faces, group.text, type::body, {place.left + label_width, y},
                           place.width - label_width);
        y += group_height(sheet, group, place.width);
    }
    return y - group_gap;
}

}  // namespace lowledger::pages
