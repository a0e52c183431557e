#include "app/desk/lending.h"

#include <algorithm>
#include <map>

#include "model/studio/due.h"
#include "reports/words/names.h"

namespace lowledger::desk {
namespace {

using studio::Loan;
using studio::Upkeep;
using words::Sentence;

std::map<studio::StudentId, std::string> names_of_students(const Desk& desk) {
    std::map<studio::StudentId, std::string> names;
    for (const auto& student : desk.file().students())
        names[student.id] = student.name;
    return names;
}

ListingCell date_cell(const words::Words& words, const std::optional<studio::Date>& date) {
    if (!date) return ListingCell();
    return {words::date_text(words, *date), *date};
}

ListingCell back_cell(const Desk& desk, const Loan& loan) {
    const auto& words = desk.words();
    if (loan.until) return date_cell(words, loan.until);
    if (!studio::is_overdue(loan, desk.today())) return words.say(Sentence::loan_out);
    return words.say_counted(Sentence::loan_overdue_one, Sentence::loan_overdue_many,
                             desk.today() - *loan.due);
}

std::string condition_text(const words::Words& words, const Loan& loan) {
    if (loan.condition_in.empty() || loan.condition_in == loan.condition_out) return loan.condition_out;
    return words.say(Sentence::loan_condition_in_and_out,
                     {{"out", loan.condition_out}, {"back", loan.condition_in}});
}

/// In the order of the table.
std::vector<Upkeep> upkeep_in_order(const Desk& desk) {
    auto upkeep = desk.file().upkeep(desk.horn()->id);
    std::ranges::reverse(upkeep);
    std::ranges::stable_sort(upkeep, std::ranges::less{},
                             [](const Upkeep& work) { return work.done_on.has_value(); });
    return upkeep;
}

}  // namespace

std::string date_or_nothing(const words::Words& words, const std::optional<studio::Date>& date) {
    return date ? words::date_text(words, *date) : std::string();
}

Listing loans_listing(const Desk& desk) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {
        {words.say(Sentence::column_student), false, true}, {words.say(Sentence::loans_from), false, true},
        {words.say(Sentence::loans_due), false, true},      {words.say(Sentence::loans_back), false, true},
        {words.say(Sentence::loans_signed), false, true},   {words.say(Sentence::loans_condition)}};
    if (!desk.horn()) return listing;
    const auto names = names_of_students(desk);
    for (const auto& loan : desk.file().loans(desk.horn()->id)) {
        const auto signed_on = loan.signed_on ? date_cell(words, loan.signed_on)
                                              : ListingCell(words.say(Sentence::loan_not_signed));
        listing.rows.push_back(
            {loan.id.number,
             {names.at(loan.student), date_cell(words, loan.from), date_cell(words, loan.due),
              back_cell(desk, loan), signed_on, condition_text(words, loan)},
             loan.until.has_value()});
    }
    return listing;
}

Listing upkeep_listing(const Desk& desk) {
    const auto& words = desk.words();
    Listing listing;
    listing.columns = {
        {words.say(Sentence::upkeep_work), false, true},  {words.say(Sentence::upkeep_what)},
        {words.say(Sentence::upkeep_state), false, true}, {words.say(Sentence::upkeep_by)},
        {words.say(Sentence::upkeep_cost), true, true},   {words.say(Sentence::upkeep_next), false, true}};
    if (!desk.horn()) return listing;
    for (const auto& work : upkeep_in_order(desk)) {
        const auto name = work_name(words, work.work);
        const bool too = work.disinfected && work.work != Upkeep::Work::disinfected;
        const auto done = work.done_on ? date_cell(words, work.done_on)
                                       : ListingCell(words.say(Sentence::upkeep_to_do), desk.today());
        ListingCell cost(money_text(work.cost));
        if (work.cost) cost.order = static_cast<double>(work.cost->cents);
        listing.rows.push_back({work.id.number,
                                {too ? words.say(Sentence::upkeep_disinfected_too, {{"work", name}}) : name,
                                 work.what, done, work.by, cost, date_cell(words, work.next_due)},
                                false});
    }
    return listing;
}

std::optional<Loan> chosen_loan(const Desk& desk) {
    if (!desk.horn()) return std::nullopt;
    const auto loans = desk.file().loans(desk.horn()->id);
    const auto chosen = desk.chosen(Table::loans);
    const auto found =
        std::ranges::find_if(loans, [&](const Loan& loan) { return loan.id.number == chosen; });
    if (found != loans.end()) return *found;
    return loans.empty() ? std::nullopt : std::optional(loans.front());
}

std::optional<Loan> loan_out(const Desk& desk, studio::HornId horn) {
    for (const auto& loan : desk.file().loans(horn))
        if (!loan.until) return loan;
    return std::nullopt;
}

std::optional<Upkeep> chosen_upkeep(const Desk& desk) {
    if (!desk.horn()) return std::nullopt;
    const auto upkeep = upkeep_in_order(desk);
    const auto chosen = desk.chosen(Table::upkeep);
    const auto found =
        std::ranges::find_if(upkeep, [&](const Upkeep& work) { return work.id.number == chosen; });
    if (found != upkeep.end()) return *found;
    return upkeep.empty() ? std::nullopt : std::optional(upkeep.front());
}

std::string name_of(const Desk& desk, studio::StudentId student) {
    const auto found = desk.file().student(student);
    return found ? found->name : std::string();
}

std::string work_name(const words::Words& words, Upkeep::Work work) {
    switch (work) {
        case Upkeep::Work::checked:
            return words.say(Sentence::work_checked);
        case Upkeep::Work::cleaned:
            return words.say(Sentence::work_cleaned);
        case Upkeep::Work::disinfected:
            return words.say(Sentence::work_disinfected);
        case Upkeep::Work::greased:
            return words.say(Sentence::work_greased);
        case Upkeep::Work::repaired:
            return words.say(Sentence::work_repaired);
        case Upkeep::Work::other:
            break;
    }
    return words.say(Sentence::work_other);
}

std::string money_text(const std::optional<studio::Money>& money) {
    return money ? studio::text(*money) : std::string();
}

std::optional<studio::Money> money_of(const Desk& desk, const SlipAnswers& answers, std::string_view id) {
    return studio::parse_money(answers.text(id), desk.file().facts().currency);
}

void ask_money(Slip& slip, const Desk& desk, const std::string& id, words::Sentence label,
               const std::optional<studio::Money>& start) {
    const auto& words = desk.words();
    slip.text(id, words.say(label), money_text(start), words.say(Sentence::hint_money));
    slip.must([&desk, id](const SlipAnswers& answers) -> std::optional<SlipProblem> {
        if (answers.empty(id) || money_of(desk, answers, id)) return std::nullopt;
        return SlipProblem{id, desk.words().say(Sentence::money_refused, {{"typed", answers.text(id)}})};
    });
}

std::vector<SlipChoice> mouthpiece_choices(const Desk& desk, std::optional<studio::MouthpieceId> also) {
    std::vector<SlipChoice> choices{{"", desk.words().say(Sentence::choose_none)}};
    for (const auto& mouthpiece : desk.file().mouthpieces()) {
        if (mouthpiece.archived && mouthpiece.id != also) continue;
        choices.push_back({key_of(mouthpiece.id), mouthpiece.size.empty()
                                                      ? mouthpiece.mark
                                                      : mouthpiece.mark + " · " + mouthpiece.size});
    }
    return choices;
}

std::vector<SlipChoice> student_choices(const Desk& desk, std::optional<studio::StudentId> also) {
    std::vector<SlipChoice> choices;
    for (const auto& student : desk.file().students())
        if (!student.archived || student.id == also) choices.push_back({key_of(student.id), student.name});
    return choices;
}

}  // namespace lowledger::desk
