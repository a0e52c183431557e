#include "reports/pages/handout.h"

#include <algorithm>
#include <utility>

#include "reports/canvas/text_block.h"
#include "reports/pages/handout_parts.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using canvas::Box;
using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr auto column_gap = 8_mm;
constexpr double left_share = 0.57;

bool measured(const HandoutInputs& inputs) {
    return inputs.answer.profile.takes_used > 0;
}

bool steps_can_be_followed(const HandoutInputs& inputs) {
    return measured(inputs) && inputs.answer.enough.tuning_notes_in();
}

/// What the right column needs beside the steps, lists at their shortest.
Millimetres least_right_height(const Sheet& sheet, const HandoutInputs& inputs, Millimetres width) {
    return least_chart_height(sheet, inputs, width) + part_gap + watch_list_height(sheet, inputs, width, 1) +
           part_gap + band_note_height(sheet, inputs, width);
}

void draw_left(const Sheet& sheet, const HandoutInputs& inputs, const Box& place) {
    if (steps_can_be_followed(inputs)) {
        draw_steps(sheet, inputs, place);
    } else {
        draw_missing_notes(sheet, inputs, place);
    }
}

void draw_right(const Sheet& sheet, const HandoutInputs& inputs, const Box& column) {
    Box place = column;
    const auto go_below = [&](Millimetres y) {
        place.height = place.bottom() - y - part_gap;
        place.top = y + part_gap;
    };
    if (!measured(inputs)) {
        draw_slide_form(sheet, inputs, place);
        return;
    }
    const bool with_advice = steps_can_be_followed(inputs);
    const Millimetres band = with_advice ? band_note_height(sheet, inputs, place.width) + part_gap : 0_mm;
    const auto watch = [&](std::size_t most) {
        return with_advice ? watch_list_height(sheet, inputs, place.width, most) + part_gap : 0_mm;
    };
    const Millimetres room = place.height - band;
    const Millimetres least = least_chart_height(sheet, inputs, place.width);
    Box chart = place;
    chart.height = std::max(std::min(room - watch(1), least), room - watch(most_by_name));
    go_below(draw_chart(sheet, inputs, chart));
    if (!with_advice) {
        draw_slide_form(sheet, inputs, place);
        return;
    }
    Box list = place;
    list.height -= band;
    go_below(draw_watch_list(sheet, inputs, list));
    draw_band_note(sheet, inputs, {place.left, place.top}, place.width);
}

void draw_cautions_alone(const Sheet& sheet, const HandoutInputs& inputs, const Box& place) {
    draw_cautions(sheet, inputs.kind, {place.left, place.top}, place.width);
}

/// The columns and the cautions as a page each, over the whole width.
void draw_large(canvas::Document& document, const HandoutInputs& inputs, const words::Words& words,
                const canvas::Faces& faces) {
    for (auto* const draw_part : {&draw_left, &draw_right, &draw_cautions_alone}) {
        canvas::Page& page = document.pages.emplace_back();
        page.size = layout_size({inputs.paper, true});
        const Sheet sheet{page, faces, words};
        const Box live = canvas::live_area(page.size);
        const Millimetres top = draw_head(sheet, inputs, live) + part_gap;
        draw_part(sheet, inputs, {live.left, top, live.width, live.bottom() - top});
    }
}

}  // namespace

canvas::Document handout(const HandoutInputs& inputs, const words::Words& words, const canvas::Faces& faces) {
    canvas::Document document;
    document.title = words.say(Sentence::handout_title, {{"student", inputs.student.name}});
    document.author = inputs.facts.teacher;
    document.bookmarks = {{inputs.student.name, 0}};
    if (inputs.large_print) {
        draw_large(document, inputs, words, faces);
        return printed(std::move(document), {inputs.paper, true});
    }
    canvas::Page& page = document.pages.emplace_back();
    page.size = canvas::size_of(inputs.paper);
    const Sheet sheet{page, faces, words};

    const Box live = canvas::live_area(page.size);
    const Millimetres foot = live.bottom() - cautions_height(sheet, inputs.kind, live.width);
    draw_cautions(sheet, inputs.kind, {live.left, foot}, live.width);
    const Millimetres top = draw_head(sheet, inputs, live) + part_gap;

    const Millimetres left_width = left_share * (live.width - column_gap);
    Box left{live.left, top, left_width, foot - part_gap - top};
    Box right{live.left + left_width + column_gap, top, live.width - left_width - column_gap, left.height};
    if (steps_can_be_followed(inputs)) {
        const Millimetres needed =
            std::max(steps_height(sheet, inputs, left.width), least_right_height(sheet, inputs, right.width));
        const auto strips = strips_that_fit(sheet, inputs, live.width, left.height - needed - part_gap);
        if (!strips.shown.empty()) {
            draw_strips(sheet, strips, {live.left, foot - part_gap - strips.height}, live.width);
            left.height -= strips.height + part_gap;
            right.height = left.height;
        }
    }
    draw_left(sheet, inputs, left);
    draw_right(sheet, inputs, right);
    return document;
}

horns::NoteStyle note_style(const HandoutInputs& inputs) {
    return studio::note_style(inputs.facts, inputs.student, inputs.kind);
}

canvas::Paper paper_of(const studio::StudioFacts& facts) {
    return facts.paper == studio::StudioFacts::Paper::letter ? canvas::Paper::letter : canvas::Paper::a4;
}

}  // namespace lowledger::pages
