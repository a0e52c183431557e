#include <vector>

#include "reports/canvas/text_block.h"
#include "reports/pages/handout_parts.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using canvas::Box;
using canvas::Point;
using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr auto staff_width = 24_mm;
constexpr auto blank_width = 20_mm;
constexpr auto blank_gap = 4_mm;
constexpr auto row_height = 21_mm;
constexpr auto slide_row_height = 9_mm;
constexpr canvas::Stroke writing_line{0.2_mm};

/// The notes without a reading: of all slides when there is none at all.
std::vector<horns::TuningStep> notes_to_play(const HandoutInputs& inputs) {
    return inputs.answer.profile.takes_used == 0 ? inputs.kind.tuning_order : inputs.answer.enough.missing;
}

void draw_blank(const Sheet& sheet, Point left_end, Millimetres width) {
    sheet.page.items.emplace_back(canvas::Line{left_end, {left_end.x + width, left_end.y}, writing_line});
}

void draw_column_heads(const Sheet& sheet, const Box& place, Millimetres y) {
    Millimetres right = place.right();
    for (const Sentence head : {Sentence::blank_second, Sentence::blank_first}) {
        canvas::draw_text(sheet.page, sheet.faces, sheet.words.say(head), type::small, {right, y},
                          canvas::Align::right);
        right -= blank_width + blank_gap;
    }
}

void draw_form_row(const Sheet& sheet, const HandoutInputs& inputs, const horns::TuningStep& step,
                   const Box& place) {
    draw_staff_note(sheet, inputs, step.note, step.fingering,
                    {place.left, place.top, staff_width, place.height});
    const Millimetres baseline = place.top + 0.5 * place.height + 1.5_mm;
    const Millimetres left = place.left + staff_width + blank_gap;
    const Millimetres blanks = 2.0 * blank_width + blank_gap;
    const std::string note =
        words::played_and_tuner(speech_of(inputs, sheet.words), step.note, step.fingering);
    const Millimetres width = place.right() - blanks - blank_gap - left;
    const Millimetres height = canvas::block_height(sheet.faces, note, type::body, width);
    canvas::draw_block(sheet.page, sheet.faces, note, type::body,
                       {left, place.top + 0.5 * (place.height - height)}, width);
    draw_blank(sheet, {place.right() - blank_width, baseline}, blank_width);
    draw_blank(sheet, {place.right() - blanks, baseline}, blank_width);
}

}  // namespace

Millimetres draw_missing_notes(const Sheet& sheet, const HandoutInputs& inputs, const Box& place) {
    const bool nothing = inputs.answer.profile.takes_used == 0;
    const auto& words = sheet.words;
    Millimetres y = canvas::draw_block(
        sheet.page, sheet.faces, words.say(nothing ? Sentence::empty_heading : Sentence::partly_heading),
        type::heading, {place.left, place.top}, place.width);
    y = canvas::draw_block(sheet.page, sheet.faces,
                           words.say(nothing ? Sentence::empty_why : Sentence::partly_why), type::body,
                           {place.left, y + 0.5_mm}, place.width);
    y = canvas::draw_block(sheet.page, sheet.faces, words.say(Sentence::empty_help), type::body,
                           {place.left, y + 1.5_mm}, place.width);
    y += canvas::leading(type::small) + 2_mm;
    draw_column_heads(sheet, place, y);
    const auto notes = notes_to_play(inputs);
    const Millimetres height =
        notes.empty() ? row_height
                      : std::min(row_height, (place.bottom() - y) / static_cast<double>(notes.size()));
    for (const auto& step : notes) {
        draw_form_row(sheet, inputs, step, {place.left, y, place.width, height});
        y += height;
    }
    return y;
}

Millimetres draw_slide_form(const Sheet& sheet, const HandoutInputs& inputs, const Box& place) {
    Millimetres y = canvas::draw_block(sheet.page, sheet.faces, sheet.words.say(Sentence::blank_slides),
                                       type::heading, {place.left, place.top}, place.width);
    y = canvas::draw_block(sheet.page, sheet.faces, sheet.words.say(Sentence::blank_slides_how), type::body,
                           {place.left, y + 0.5_mm}, place.width);
    for (const auto& slide : inputs.kind.slides) {
        y += slide_row_height;
        const std::string name = slide_title(inputs.kind, slide.id);
        canvas::draw_text(
            sheet.page, sheet.faces,
            canvas::shortened(sheet.faces, name, type::body, place.width - blank_width - blank_gap),
            type::body, {place.left, y - 1_mm});
        draw_blank(sheet, {place.right() - blank_width, y}, blank_width);
    }
    return y;
}

}  // namespace lowledger::pages
