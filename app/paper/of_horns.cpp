#include "app/paper/of_horns.h"

#include <algorithm>
#include <utility>

#include "app/paper/who_has.h"
#include "model/studio/kind_of.h"
#include "model/studio/questions.h"
#include "reports/words/names.h"

namespace lowledger::paper {
namespace {

pages::LoanForm form_of(const Gathering& from, const studio::Student& student, const studio::Horn& horn,
                        std::optional<studio::Loan> loan) {
    const auto kind = studio::kind_of(horn);
    pages::LoanForm form{.facts = from.facts,
                         .date = from.day,
                         .student = student,
                         .horn = horn,
                         .kind_name = words::kind_name(kind),
                         .cautions = kind.cautions,
                         .loan = std::move(loan),
                         .mouthpiece = {},
                         .style = from.style};
    if (form.loan && form.loan->mouthpiece) {
        const auto mouthpiece = from.file.mouthpiece(*form.loan->mouthpiece);
        if (mouthpiece)
            form.mouthpiece =
                mouthpiece->size.empty() ? mouthpiece->mark : mouthpiece->mark + ", " + mouthpiece->size;
    }
    return form;
}

}  // namespace

pages::HornCard horn_card(const Gathering& from, const studio::Horn& horn) {
    const WhoHas who(from);
    const auto kind = studio::kind_of(horn);
    pages::HornCard card{.facts = from.facts,
                         .date = from.day,
                         .horn = horn,
                         .kind_name = words::kind_name(kind),
                         .owner = who.name(horn.owner),
                         .holders = {},
                         .slides = {},
                         .upkeep = from.file.upkeep(horn.id),
                         .cautions = kind.cautions,
                         .style = from.style};
    for (auto& holder : who.of(horn.id))
        card.holders.push_back(std::move(holder.name));
    const auto positions = from.file.slide_positions(horn.id, from.day);
    for (const auto& slide : horn.slides) {
        const auto named = std::ranges::find_if(
            kind.slides, [&](const horns::SlideKind& each) { return each.id == slide.slide; });
        const auto now = positions.find(slide.slide);
        card.slides.push_back({named == kind.slides.end() ? slide.slide : named->name, slide,
                               now == positions.end() ? std::nullopt : std::optional(now->second)});
    }
    return card;
}

std::vector<pages::LoanForm> loan_forms(const Gathering& from, const studio::Student& student) {
    std::vector<pages::LoanForm> forms;
    for (const auto& loan : from.file.loans(student.id)) {
        const auto horn = loan.until ? std::nullopt : from.file.horn(loan.horn);
        if (horn) forms.push_back(form_of(from, student, *horn, loan));
    }
    if (!forms.empty()) return forms;
    for (const auto id : studio::horns_on(from.file.horn_uses(student.id), student.id, from.day)) {
        const auto horn = from.file.horn(id);
        if (horn && horn->owner != student.id) forms.push_back(form_of(from, student, *horn, std::nullopt));
    }
    return forms;
}

}  // namespace lowledger::paper
