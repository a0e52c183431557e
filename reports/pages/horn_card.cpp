#include "reports/pages/horn_card.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "reports/canvas/table.h"
#include "reports/pages/fact_rows.h"
#include "reports/pages/flow.h"
#include "reports/pages/listed.h"
#include "reports/words/book_words.h"
#include "reports/words/names.h"
#include "reports/words/tuning_words.h"

namespace lowledger::pages {
namespace {

using canvas::Align;
using namespace units::literals;
using words::Sentence;

constexpr auto part_gap = 5_mm;

std::vector<Fact> facts_of(const HornCard& card, const words::Words& words) {
    const auto& horn = card.horn;
    std::string owner = card.owner.empty() ? horn.belongs_to : card.owner;
    if (owner.empty()) owner = words.say(Sentence::inventory_the_school);
    return {{words.say(Sentence::inventory_serial), horn.serial_number},
            {words.say(Sentence::horn_tag), horn.inventory_tag},
            {words.say(Sentence::inventory_maker), horn.maker_and_model},
            {words.say(Sentence::inventory_owner), std::move(owner)},
            {words.say(Sentence::inventory_with), listed(card.holders)},
            {words.say(Sentence::horn_case), horn.case_text},
            {words.say(Sentence::horn_locker), horn.locker},
            {words.say(Sentence::horn_accessories), horn.accessories},
            {words.say(Sentence::horn_condition), horn.condition},
            {words.say(Sentence::horn_value), words::money_or_nothing(horn.value)},
            {words.say(Sentence::horn_bought_on), words::date_or_nothing(words, horn.bought_on)}};
}

std::string whole(units::Millimetres length) {
    return std::to_string(std::lround(length.value()));
}

canvas::Table slides_table(const HornCard& card, const words::Words& words) {
    canvas::Table table{.columns = {{words.say(Sentence::horn_card_slide)},
                                    {words.say(Sentence::horn_card_now), Align::right},
                                    {words.say(Sentence::horn_card_least), Align::right},
                                    {words.say(Sentence::horn_card_travel), Align::right},
                                    {words.say(Sentence::horn_card_remark), Align::left, 1.0}},
                        .rows = {},
                        .head = type::strong,
                        .body = type::body};
    for (const auto& each : card.slides)
        table.rows.push_back({words::capitalised(each.name), each.now ? whole(*each.now) : std::string(),
                              whole(each.slide.least), whole(each.slide.travel),
                              each.slide.stuck ? words.say(Sentence::horn_card_stuck) : std::string()});
    return table;
}

canvas::Table upkeep_table(const HornCard& card, const words::Words& words) {
    canvas::Table table{.columns = {{words.say(Sentence::upkeep_state)},
                                    {words.say(Sentence::upkeep_work)},
                                    {words.say(Sentence::upkeep_what), Align::left, 1.0},
                                    {words.say(Sentence::upkeep_by)},
                                    {words.say(Sentence::upkeep_cost), Align::right},
                                    {words.say(Sentence::upkeep_next)}},
                        .rows = {},
                        .head = type::strong,
                        .body = type::body};
    auto newest_first = card.upkeep;
    std::ranges::reverse(newest_first);
    for (const auto& work : newest_first)
        table.rows.push_back(
            {work.done_on ? words::date_text(words, *work.done_on) : words.say(Sentence::upkeep_to_do),
             words::work_name(words, work.work), work.what, work.by, words::money_or_nothing(work.cost),
             words::date_or_nothing(words, work.next_due)});
    return table;
}

}  // namespace

canvas::Document horn_card(const HornCard& card, const words::Words& words, const canvas::Faces& faces) {
    Flow flow(words.say(Sentence::horn_card_of, {{"mark", card.horn.mark}}), card.style, words, faces);
    flow.head_of(card.facts, card.horn.mark, card.kind_name, words::date_text(words, card.date));
    put_facts(flow, faces, facts_of(card, words), false);
    flow.heading(words.say(Sentence::horn_card_slides), part_gap, 15_mm);
    flow.table(slides_table(card, words), 1_mm);
    flow.heading(words.say(Sentence::horn_card_upkeep), part_gap, 15_mm);
    if (card.upkeep.empty())
        flow.text(words.say(Sentence::horn_card_no_upkeep), type::body, 1_mm);
    else
        flow.table(upkeep_table(card, words), 1_mm);
    flow.text(words.say(Sentence::caution_stuck_slide), type::small, part_gap);
    for (const auto& caution : card.cautions)
        flow.text(words::caution_of_kind(words, caution), type::small, 0.5_mm);
    return flow.finished(card.facts, card.date);
}

}  // namespace lowledger::pages
