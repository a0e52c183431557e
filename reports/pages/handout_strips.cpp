#include <algorithm>
#include <vector>

#include "reports/canvas/text_block.h"
#include "reports/charts/gauge_strip.h"
#include "reports/pages/handout_parts.h"
#include "reports/words/names.h"

namespace lowledger::pages {
namespace {

using canvas::Point;
using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr auto gap = 2.5_mm;

/// The scale need not go much further than its mark, unless the name needs the room.
constexpr auto beyond_mark = 8_mm;

struct Candidate {
    charts::GaugeStrip strip;
    bool moves = false;
};

/// A strip for each slide whose place is known, in working order.
std::vector<Candidate> candidates(const Sheet& sheet, const HandoutInputs& inputs) {
    std::vector<Candidate> all;
    for (const auto& step : inputs.answer.card.steps) {
        const auto* const slide = slide_answer(inputs.answer, step.slide);
        if (slide == nullptr || !step.position_known || is_stuck(inputs.horn, step.slide)) continue;
        charts::GaugeStrip strip{slide_title(inputs.kind, step.slide), words::millimetres_text(step.to),
                                 step.to, step.to + beyond_mark};
        strip.travel =
            std::max(step.to, std::min(slide->travel, charts::gauge_strip_size(sheet.faces, strip).width));
        all.push_back({strip, step.advice == tuning::Advice::move});
    }
    return all;
}

/// Takes one out: the last that does not move, or the last.
void drop_one(std::vector<Candidate>& all, std::vector<std::string>& left_out) {
    const auto still = std::find_if(all.rbegin(), all.rend(), [](const Candidate& c) { return !c.moves; });
    const auto gone = still == all.rend() ? std::prev(all.end()) : std::prev(still.base());
    left_out.insert(left_out.begin(), gone->strip.name);
    all.erase(gone);
}

struct Placed {
    const charts::GaugeStrip* strip;
    Point corner;
    canvas::Size size;
};

/// As many beside each other as fit, in their order.
std::vector<Placed> placed(const Sheet& sheet, const std::vector<charts::GaugeStrip>& strips, Point top_left,
                           Millimetres width) {
    std::vector<Placed> all;
    Point corner = top_left;
    Millimetres row_height;
    for (const auto& strip : strips) {
        const canvas::Size size = charts::gauge_strip_size(sheet.faces, strip);
        if (corner.x > top_left.x && corner.x + size.width > top_left.x + width) {
            corner = {top_left.x, corner.y + row_height + gap};
            row_height = 0_mm;
        }
        all.push_back({&strip, corner, size});
        corner.x += size.width + gap;
        row_height = std::max(row_height, size.height);
    }
    return all;
}

std::string how_to(const Sheet& sheet, const Strips& strips) {
    std::string text = sheet.words.say(Sentence::strips_how);
    if (strips.left_out.empty()) return text;
    std::string slides;
    for (const auto& name : strips.left_out)
        slides += (slides.empty() ? "" : ", ") + name;
    return text + " " + sheet.words.say(Sentence::strips_left_out, {{"slides", slides}});
}

/// How-to at the left of the line to check the print.
struct Above {
    std::string how;
    canvas::Size check;
    Millimetres text_width;
    /// Of all above the strips, heading included.
    Millimetres height;
};

Above above_strips(const Sheet& sheet, const Strips& strips, Millimetres width) {
    Above above;
    above.how = how_to(sheet, strips);
    above.check = charts::print_check_size(sheet.faces, sheet.words.say(Sentence::strips_check));
    above.text_width = width - above.check.width - 3.0 * gap;
    above.height = canvas::leading(type::heading) +
                   std::max(canvas::block_height(sheet.faces, above.how, type::small, above.text_width),
                            above.check.height) +
                   2_mm;
    return above;
}

Millimetres height_of(const Sheet& sheet, const Strips& strips, Millimetres width) {
    if (strips.shown.empty()) return 0_mm;
    const auto all = placed(sheet, strips.shown, {0_mm, above_strips(sheet, strips, width).height}, width);
    return all.back().corner.y + all.back().size.height;
}

}  // namespace

Strips strips_that_fit(const Sheet& sheet, const HandoutInputs& inputs, Millimetres width,
                       Millimetres height) {
    auto all = candidates(sheet, inputs);
    Strips strips;
    while (!all.empty()) {
        strips.shown.clear();
        for (const auto& candidate : all)
            strips.shown.push_back(candidate.strip);
        strips.height = height_of(sheet, strips, width);
        if (strips.height <= height) return strips;
        drop_one(all, strips.left_out);
    }
    return {};
}

void draw_strips(const Sheet& sheet, const Strips& strips, Point top_left, Millimetres width) {
    const Above above = above_strips(sheet, strips, width);
    const Millimetres how_top = top_left.y + canvas::leading(type::heading);
    canvas::draw_text(sheet.page, sheet.faces, sheet.words.say(Sentence::strips_heading), type::heading,
                      {top_left.x, top_left.y + canvas::ascent(type::heading)});
    canvas::draw_block(sheet.page, sheet.faces, above.how, type::small, {top_left.x, how_top},
                       above.text_width);
    charts::draw_print_check(sheet.page, sheet.faces, sheet.words.say(Sentence::strips_check),
                             {top_left.x + width - above.check.width, how_top});
    for (const Placed& at : placed(sheet, strips.shown, {top_left.x, top_left.y + above.height}, width))
        charts::draw_gauge_strip(sheet.page, sheet.faces, *at.strip, at.corner);
}

}  // namespace lowledger::pages
