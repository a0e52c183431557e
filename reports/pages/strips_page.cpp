#include "reports/pages/strips_page.h"

#include <algorithm>
#include <string>
#include <vector>

#include "reports/canvas/text_block.h"
#include "reports/charts/gauge_strip.h"
#include "reports/pages/flow.h"
#include "reports/pages/handout_parts.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr auto strip_gap = 4_mm;

struct StripsOfHorn {
    std::vector<charts::GaugeStrip> shown;
    std::string left_out;
};

StripsOfHorn strips_of(const HandoutInputs& inputs, const canvas::Faces& faces, Millimetres width) {
    StripsOfHorn strips;
    for (const auto& slide : inputs.kind.slides) {
        const auto* const answer = slide_answer(inputs.answer, slide.id);
        if (answer != nullptr && answer->position_known && answer->recommended <= answer->travel) {
            charts::GaugeStrip strip{slide_title(inputs.kind, slide.id),
                                     words::millimetres_text(answer->recommended), answer->recommended,
                                     std::min(answer->travel, width)};
            if (strip.position <= strip.travel && charts::gauge_strip_size(faces, strip).width <= width) {
                strips.shown.push_back(strip);
                continue;
            }
        }
        strips.left_out += (strips.left_out.empty() ? "" : ", ") + slide_name(inputs.kind, slide.id);
    }
    return strips;
}

}  // namespace

canvas::Document strips_page(const HandoutInputs& inputs, const words::Words& words,
                             const canvas::Faces& faces) {
    const PageStyle true_size{inputs.paper, false};
    Flow flow(words.say(Sentence::strip_page_title, {{"student", inputs.student.name}}), true_size, words,
              faces);
    const auto strips = strips_of(inputs, faces, flow.live().width);
    flow.head(inputs.facts, inputs.date,
              words.say(strips.shown.empty() ? Sentence::strip_page_none : Sentence::strips_how));
    flow.block(words.say(Sentence::handout_horn,
                         {{"kind", words::kind_name(inputs.kind)}, {"mark", inputs.horn.mark}}),
               type::strong, 1.5_mm);
    const std::string check = words.say(Sentence::strips_check);
    const auto check_size = charts::print_check_size(faces, check);
    charts::draw_print_check(flow.sheet().page, faces, check, flow.place(check_size.height, 2_mm));
    for (const auto& strip : strips.shown) {
        const auto size = charts::gauge_strip_size(faces, strip);
        charts::draw_gauge_strip(flow.sheet().page, faces, strip, flow.place(size.height, strip_gap));
    }
    if (!strips.left_out.empty())
        flow.block(words.say(Sentence::strip_page_ruler, {{"slides", strips.left_out}}), type::body,
                   strip_gap);
    flow.block(words.say(Sentence::caution_stuck_slide), type::small, strip_gap);
    return flow.finished(inputs.facts, inputs.date);
}

}  // namespace lowledger::pages
