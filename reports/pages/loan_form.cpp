#include "reports/pages/loan_form.h"

#include <array>

#include "reports/canvas/text_block.h"
#include "reports/pages/fact_rows.h"
#include "reports/pages/flow.h"
#include "reports/pages/listed.h"
#include "reports/words/book_words.h"
#include "reports/words/names.h"
#include "reports/words/tuning_words.h"

namespace lowledger::pages {
namespace {

using units::Millimetres;
using namespace units::literals;
using words::Sentence;

constexpr auto part_gap = 5_mm;
constexpr auto to_sign = 13_mm;
constexpr auto between = 8_mm;
constexpr int lines_for_terms = 4;

std::vector<Fact> facts_of(const LoanForm& form, const words::Words& words) {
    const auto& horn = form.horn;
    const auto day = [&](std::optional<studio::Date> date) { return words::date_or_nothing(words, date); };
    const bool lent = form.loan.has_value();
    const auto& accessories =
        lent && !form.loan->accessories.empty() ? form.loan->accessories : horn.accessories;
    const auto& condition =
        lent && !form.loan->condition_out.empty() ? form.loan->condition_out : horn.condition;
    return {
        {words.say(Sentence::loan_form_horn), listed({horn.mark, form.kind_name, horn.maker_and_model})},
        {words.say(Sentence::loan_form_numbers), listed({horn.serial_number, horn.inventory_tag})},
        {words.say(Sentence::loan_form_case), horn.case_text},
        {words.say(Sentence::loan_form_along), accessories},
        {words.say(Sentence::loan_form_mouthpiece), form.mouthpiece},
        {words.say(Sentence::loan_form_value), words::money_or_nothing(horn.value)},
        {words.say(Sentence::loan_form_condition), condition},
        {words.say(Sentence::loan_form_from), lent ? day(form.loan->from) : std::string()},
        {words.say(Sentence::loan_form_due), lent ? day(form.loan->due) : std::string()},
    };
}

std::vector<std::string> care(const LoanForm& form, const words::Words& words) {
    std::vector<std::string> all{words.say(Sentence::loan_form_care_case)};
    for (const auto& caution : form.cautions)
        all.push_back(words::caution_of_kind(words, caution));
    for (const auto sentence : {Sentence::caution_stuck_slide, Sentence::caution_mouthpiece,
                                Sentence::loan_form_care_repair, Sentence::loan_form_care_rules})
        all.push_back(words.say(sentence));
    return all;
}

/// Lines side by side, under each who signs there.
void draw_signatures(Flow& flow, const canvas::Faces& faces, const words::Words& words) {
    constexpr std::array signers{Sentence::loan_form_sign_student, Sentence::loan_form_sign_guardian,
                                 Sentence::loan_form_sign_teacher};
    const Millimetres width = (flow.live().width - 2.0 * between) * (1.0 / 3.0);
    Millimetres text;
    for (const auto signer : signers)
        text = std::max(text, canvas::block_height(faces, words.say(signer), type::small, width));
    canvas::Point at = flow.place(to_sign + 1_mm + text, 2_mm);
    for (const auto signer : signers) {
        auto& page = flow.sheet().page;
        page.items.emplace_back(
            canvas::Line{{at.x, at.y + to_sign}, {at.x + width, at.y + to_sign}, {0.25_mm}});
        canvas::draw_block(page, faces, words.say(signer), type::small, {at.x, at.y + to_sign + 1_mm}, width);
        at.x += width + between;
    }
}

}  // namespace

canvas::Document loan_form(const LoanForm& form, const words::Words& words, const canvas::Faces& faces) {
    Flow flow(words.say(Sentence::loan_form_of, {{"mark", form.horn.mark}, {"name", form.student.name}}),
              form.style, words, faces);
    flow.head_of(form.facts, form.student.name, words.say(Sentence::loan_form_title),
                 words::date_text(words, form.date));
    flow.block(words.say(Sentence::loan_form_intro), type::body, 2_mm);
    put_facts(flow, faces, facts_of(form, words), true);
    flow.heading(words.say(Sentence::loan_form_terms), part_gap, 20_mm);
    flow.blank_lines(lines_for_terms, 0_mm);
    flow.heading(words.say(Sentence::loan_form_care), part_gap, 10_mm);
    for (const auto& sentence : care(form, words))
        flow.text(sentence, type::body, 0.8_mm);
    flow.heading(words.say(Sentence::loan_form_agreed), part_gap, to_sign + 8_mm);
    draw_signatures(flow, faces, words);
    flow.heading(words.say(Sentence::loan_form_back), part_gap, 20_mm);
    put_facts(
        flow, faces,
        {{words.say(Sentence::loan_form_back_on),
          form.loan ? words::date_or_nothing(words, form.loan->until) : std::string()},
         {words.say(Sentence::loan_form_back_condition), form.loan ? form.loan->condition_in : std::string()},
         {words.say(Sentence::loan_form_back_taken_by), {}}},
        true);
    return flow.finished(form.facts, form.date);
}

}  // namespace lowledger::pages
