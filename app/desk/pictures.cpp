#include "app/desk/pictures.h"

#include <algorithm>

#include "reports/canvas/text_block.h"
#include "reports/charts/lean_chart.h"
#include "reports/charts/slide_rule.h"
#include "reports/engraving/note_row.h"
#include "reports/words/names.h"
#include "reports/words/tuning_words.h"

namespace lowledger::desk {
namespace {

using units::Millimetres;
using words::Sentence;

// The system's interface type is about 10 points; drawings beside it keep to that.
constexpr canvas::TextStyle heading{units::Points(10.0), canvas::Weight::bold, canvas::Tone::ink};
constexpr canvas::TextStyle body{units::Points(9.5), canvas::Weight::regular, canvas::Tone::ink};
constexpr Millimetres margin{1.0};
constexpr Millimetres gap{4.0};

words::Speech speech_of(const PictureTools& tools, const LiveAnswer& live) {
    return {tools.words, live.inputs->kind, tools.style};
}

bool is_stuck(const tuning::TuningInputs& inputs, const std::string& slide) {
    return std::ranges::any_of(inputs.slides, [&](const auto& s) { return s.slide == slide && s.stuck; });
}

charts::SlideRule rule_of(const tuning::SlideAnswer& slide) {
    charts::SlideRule rule{.now = {},
                           .recommended = {},
                           .half_width = slide.half_width.value_or(Millimetres(0.0)),
                           .least = slide.least,
                           .travel = slide.travel};
    if (slide.position_known) {
        rule.now = slide.now;
        rule.recommended = slide.recommended;
    }
    return rule;
}

/// The slides in the order that they are set in.
std::vector<const tuning::SlideAnswer*> in_working_order(const LiveAnswer& live) {
    std::vector<const tuning::SlideAnswer*> order;
    const auto& slides = live.answer->settings.slides;
    const auto add = [&](const std::string& id) {
        const auto found = std::ranges::find(slides, id, &tuning::SlideAnswer::slide);
        if (found != slides.end() && std::ranges::find(order, &*found) == order.end())
            order.push_back(&*found);
    };
    for (const auto& step : live.inputs->kind.tuning_order)
        add(step.slide);
    for (const auto& slide : slides)
        add(slide.slide);
    return order;
}

}  // namespace

Picture slide_rules(const PictureTools& tools, const LiveAnswer& live, Millimetres width) {
    const auto& faces = tools.engraver.faces();
    const auto speech = speech_of(tools, live);
    Picture picture;
    picture.page.size.width = width;
    const Millimetres inner = width - margin * 2.0;
    Millimetres y = margin;
    for (const auto* slide : in_working_order(live)) {
        const std::string name = words::capitalised(live.inputs->kind.slide(slide->slide)->name);
        const std::string text =
            words::slide_rule_text(speech, *live.answer, *slide, is_stuck(*live.inputs, slide->slide));
        picture.content.append(name).append(": ").append(text).append("\n");
        y = canvas::draw_block(picture.page, faces, name, heading, {margin, y}, inner);
        // A slide of unknown position has no place on a scale; its sentence says how far to move it.
        if (slide->position_known) {
            charts::draw_slide_rule(picture.page, faces, rule_of(*slide),
                                    {margin, y, inner, charts::slide_rule_height()});
            y += charts::slide_rule_height();
        }
        y = canvas::draw_block(picture.page, faces, text, body, {margin, y}, inner) + gap;
    }
    picture.page.size.height = y;
    return picture;
}

Picture lean_picture(const PictureTools& tools, const LiveAnswer& live, ChartNotes notes, Millimetres width) {
    const auto speech = speech_of(tools, live);
    charts::LeanChart chart{
        .clef = tools.style.reader.clef,
        .notes = {},
        .tolerance = live.answer->remains.tolerance,
        .range = {},
        .words = {tools.words.say(Sentence::chart_before), tools.words.say(Sentence::chart_after),
                  tools.words.say(Sentence::chart_unit)}};
    Picture picture;
    for (const auto& note : live.answer->settings.notes) {
        const bool measured = note.way.takes > 0;
        if (notes == ChartNotes::measured ? !measured : note.weight <= 0.0) continue;
        charts::LeanNote column{.spelling = horns::spelt(note.note, tools.style),
                                .fingering = words::fingering_label(live.inputs->kind, note.way.fingering),
                                .before = note.lean_before,
                                .after = note.lean_after,
                                .spread = note.way.spread,
                                .alternate = !note.is_usual,
                                .measured = measured};
        picture.content += tools.words.say(Sentence::chart_row,
                                           {{"played", words::played(speech, note.note, note.way.fingering)},
                                            {"before", words::cents_text(note.lean_before)},
                                            {"after", words::cents_text(note.lean_after)}});
        picture.content += "\n";
        chart.notes.push_back(std::move(column));
    }
    picture.page.size.width = width;
    if (chart.notes.empty()) return picture;
    const Millimetres height = charts::lean_chart_height(tools.engraver, chart, width);
    charts::draw_lean_chart(picture.page, tools.engraver, chart,
                            {Millimetres(0), Millimetres(0), width, height});
    picture.page.size.height = height;
    return picture;
}

Picture note_on_staff(const PictureTools& tools, const horns::HornKind& kind, units::Pitch note,
                      const horns::Fingering& fingering, Millimetres width) {
    const auto& engraver = tools.engraver;
    const engraving::NoteRow row{.clef = tools.style.reader.clef,
                                 .notes = {{.spelling = horns::spelt(note, tools.style),
                                            .fingering = words::fingering_label(kind, fingering),
                                            .alternate = false,
                                            .tendency = {}}},
                                 .duration = engraving::Duration::whole};
    const auto heights = engraving::row_heights(engraver, row);
    // The staff keeps its place whichever note stands on it.
    const Millimetres top = engraver.space() * 5.0;
    const engraving::Staff staff{tools.style.reader.clef, {margin, top}, width - margin * 2.0};
    const Millimetres first = engraving::first_column(engraver, row);
    Picture picture;
    engraving::draw_note_row(picture.page, engraver, row, staff, margin + first,
                             width - margin * 2.0 - first);
    picture.page.size = {width, std::max(top + heights.bottom, top + engraver.space() * 11.0)};
    picture.content = words::played_and_tuner({tools.words, kind, tools.style}, note, fingering);
    return picture;
}

}  // namespace lowledger::desk
