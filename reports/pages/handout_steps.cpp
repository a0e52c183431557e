#include <algorithm>
#include <cctype>

#include "reports/canvas/text_block.h"
#include "reports/engraving/note_row.h"
#include "reports/pages/handout_parts.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using canvas::Box;
using tuning::Advice;
using tuning::CardStep;
using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr auto staff_space = 1.6_mm;
constexpr auto staff_width = 24_mm;
constexpr auto staff_gap = 4_mm;
constexpr auto heading_gap = 0.5_mm;
constexpr auto preparation_gap = 2.5_mm;
constexpr auto details_gap = 1.4_mm;
constexpr auto step_gap = 1.5_mm;
constexpr auto least_staff_height = 17_mm;
/// More room than this between steps looks lost.
constexpr auto most_extra = 7_mm;

std::string preparation(const Sheet& sheet, const HandoutInputs& inputs) {
    const auto& card = inputs.answer.card;
    return sheet.words.say(Sentence::step_warm_up, {{"minutes", std::to_string(card.warm_up_minutes)}}) +
           " " + sheet.words.say(Sentence::step_how, {{"takes", std::to_string(card.takes)}}) + " " +
           sheet.words.say(Sentence::step_shift);
}

Millimetres preparation_height(const Sheet& sheet, const HandoutInputs& inputs, Millimetres width) {
    return canvas::leading(type::heading) + heading_gap +
           canvas::block_height(sheet.faces, preparation(sheet, inputs), type::body, width) + preparation_gap;
}

void draw_preparation(const Sheet& sheet, const HandoutInputs& inputs, const Box& place) {
    const Millimetres y =
        canvas::draw_block(sheet.page, sheet.faces, sheet.words.say(Sentence::steps_heading), type::heading,
                           {place.left, place.top}, place.width);
    canvas::draw_block(sheet.page, sheet.faces, preparation(sheet, inputs), type::body,
                       {place.left, y + heading_gap}, place.width);
}

/// What the slide does, as short as it can be said.
std::string action(const Sheet& sheet, const HandoutInputs& inputs, const CardStep& step) {
    const words::Words& words = sheet.words;
    if (step.advice == Advice::fixed) {
        return words.say(is_stuck(inputs.horn, step.slide) ? Sentence::step_stuck : Sentence::step_held);
    }
    if (step.advice == Advice::leave) return words.say(Sentence::step_leave);
    const std::string change = words::millimetres_text(abs(step.change));
    const bool out = step.change > 0_mm;
    if (!step.position_known) {
        return words.say(out ? Sentence::step_pull_from_here : Sentence::step_push_from_here,
                         {{"change", change}});
    }
    return words.say(out ? Sentence::step_pull : Sentence::step_push, {{"change", change}});
}

/// The note to play and what to do when it reads otherwise than its aim.
std::string details(const Sheet& sheet, const HandoutInputs& inputs, const CardStep& step) {
    const auto speech = speech_of(inputs, sheet.words);
    std::string text = sheet.words.say(
        Sentence::step_play, {{"played", words::played_and_tuner(speech, step.note, step.fingering)}});
    if (const auto* const slide = slide_answer(inputs.answer, step.slide)) {
        text += " " + words::differs_sentence(speech, step, *slide);
    }
    return text;
}

Millimetres text_width(Millimetres step_width) {
    return step_width - staff_width - staff_gap;
}

Millimetres step_height(const Sheet& sheet, const HandoutInputs& inputs, const CardStep& step,
                        const canvas::TextStyle& details_style, Millimetres width) {
    const Millimetres text =
        canvas::ascent(type::title) + canvas::leading(type::lead) + details_gap +
        canvas::block_height(sheet.faces, details(sheet, inputs, step), details_style, text_width(width));
    return std::max(text, least_staff_height) + step_gap;
}

Millimetres all_steps_height(const Sheet& sheet, const HandoutInputs& inputs,
                             const canvas::TextStyle& details_style, Millimetres width) {
    Millimetres height;
    for (const auto& step : inputs.answer.card.steps)
        height += step_height(sheet, inputs, step, details_style, width);
    return height;
}

void draw_step(const Sheet& sheet, const HandoutInputs& inputs, const CardStep& step, int number,
               const canvas::TextStyle& details_style, const Box& place) {
    draw_staff_note(sheet, inputs, step.note, step.fingering,
                    {place.left, place.top, staff_width, place.height});
    const Millimetres width = text_width(place.width);
    const Millimetres left = place.right() - width;

    const Millimetres first = place.top + canvas::ascent(type::title);
    Millimetres taken;
    if (step.position_known) {
        const std::string position = words::millimetres_text(step.to);
        canvas::draw_text(sheet.page, sheet.faces, position, type::title, {place.right(), first},
                          canvas::Align::right);
        taken = sheet.faces.width(position, type::title) + 3_mm;
    }
    const std::string title = std::to_string(number) + ". " + slide_title(inputs.kind, step.slide);
    canvas::draw_text(sheet.page, sheet.faces,
                      canvas::shortened(sheet.faces, title, type::heading, width - taken), type::heading,
                      {left, first});

    const Millimetres second = first + canvas::leading(type::lead);
    const std::string aim = sheet.words.say(Sentence::step_aim, {{"cents", words::cents_text(step.aim)}});
    canvas::draw_text(sheet.page, sheet.faces, aim, type::heading, {place.right(), second},
                      canvas::Align::right);
    const Millimetres aim_width = sheet.faces.width(aim, type::heading) + 3_mm;
    canvas::draw_text(
        sheet.page, sheet.faces,
        canvas::shortened(sheet.faces, action(sheet, inputs, step), type::lead, width - aim_width),
        type::lead, {left, second});
    canvas::draw_block(sheet.page, sheet.faces, details(sheet, inputs, step), details_style,
                       {left, second + details_gap}, width);
}

}  // namespace

words::Speech speech_of(const HandoutInputs& inputs, const words::Words& words) {
    return {words, inputs.kind, note_style(inputs)};
}

std::string slide_name(const horns::HornKind& kind, const std::string& id) {
    const auto* const slide = kind.slide(id);
    return slide != nullptr ? slide->name : id;
}

std::string slide_title(const horns::HornKind& kind, const std::string& id) {
    std::string name = slide_name(kind, id);
    if (!name.empty()) name[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(name[0])));
    return name;
}

const tuning::SlideAnswer* slide_answer(const tuning::TuningAnswer& answer, const std::string& id) {
    const auto& slides = answer.settings.slides;
    const auto found =
        std::find_if(slides.begin(), slides.end(), [&](const auto& slide) { return slide.slide == id; });
    return found == slides.end() ? nullptr : &*found;
}

bool is_stuck(const studio::Horn& horn, const std::string& slide) {
    return std::any_of(horn.slides.begin(), horn.slides.end(),
                       [&](const studio::HornSlide& s) { return s.slide == slide && s.stuck; });
}

void draw_staff_note(const Sheet& sheet, const HandoutInputs& inputs, units::Pitch note,
                     const horns::Fingering& fingering, const Box& place) {
    const engraving::Engraver engraver(sheet.faces, staff_space);
    engraving::NoteRow row;
    const horns::NoteStyle style = note_style(inputs);
    row.clef = style.reader.clef;
    row.notes = {
        {horns::spelt(note, style), words::fingering_figure(inputs.kind, fingering), false, std::nullopt}};
    const auto heights = engraving::row_heights(engraver, row);
    const Millimetres top = place.top + 0.5 * std::max(0_mm, place.height - heights.height()) - heights.top;
    const engraving::Staff staff{row.clef, {place.left, top}, place.width};
    const Millimetres first = engraving::first_column(engraver, row);
    engraving::draw_note_row(sheet.page, engraver, row, staff, place.left + first, place.width - first);
}

Millimetres steps_height(const Sheet& sheet, const HandoutInputs& inputs, Millimetres width) {
    return preparation_height(sheet, inputs, width) + all_steps_height(sheet, inputs, type::body, width);
}

void draw_steps(const Sheet& sheet, const HandoutInputs& inputs, const Box& place) {
    draw_preparation(sheet, inputs, place);
    const auto& steps = inputs.answer.card.steps;
    if (steps.empty()) return;
    Millimetres top = place.top + preparation_height(sheet, inputs, place.width);
    const Millimetres room = place.bottom() - top;
    const bool fits = all_steps_height(sheet, inputs, type::body, place.width) <= room;
    const auto& style = fits ? type::body : type::small;
    const Millimetres spare = room - all_steps_height(sheet, inputs, style, place.width);
    const Millimetres extra = std::min(most_extra, std::max(0_mm, spare / static_cast<double>(steps.size())));
    int number = 0;
    for (const CardStep& step : steps) {
        const Millimetres height = step_height(sheet, inputs, step, style, place.width);
        draw_step(sheet, inputs, step, ++number, style, {place.left, top, place.width, height});
        top += height + extra;
    }
}

}  // namespace lowledger::pages
