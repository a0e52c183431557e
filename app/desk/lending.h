#pragma once

#include <optional>
#include <string>

#include "app/desk/desk.h"
#include "app/desk/listing.h"
#include "app/desk/slip.h"

/// What actions and tables of loans, upkeep and mouthpieces share.
namespace lowledger::desk {

/// Loans of the desk's horn, newest first.
Listing loans_listing(const Desk& desk);
/// Upkeep of the desk's horn: what is to be done first, then what was done, the newest first.
Listing upkeep_listing(const Desk& desk);

/// The row chosen in the table of loans, or the newest loan; empty without a loan of the desk's horn.
std::optional<studio::Loan> chosen_loan(const Desk& desk);
/// The loan of that horn that is out today.
std::optional<studio::Loan> loan_out(const Desk& desk, studio::HornId horn);
/// The row chosen in the table of upkeep, or its first; empty without upkeep of the desk's horn.
std::optional<studio::Upkeep> chosen_upkeep(const Desk& desk);

/// Asks how a horn that is out came back, and files it.
void bring_back(Desk& desk, const studio::Horn& horn, studio::Loan loan);

/// Empty where there is no such student.
std::string name_of(const Desk& desk, studio::StudentId student);
std::string work_name(const words::Words& words, studio::Upkeep::Work work);
/// "25 November 2026"; empty for none.
std::string date_or_nothing(const words::Words& words, const std::optional<studio::Date>& date);

/// An amount as a field shows it; empty for none.
std::string money_text(const std::optional<studio::Money>& money);
/// What the field holds; empty for an empty one or what is no amount.
std::optional<studio::Money> money_of(const Desk& desk, const SlipAnswers& answers, std::string_view id);
/// Adds a field for an amount, which has to be one or empty.
void ask_money(Slip& slip, const Desk& desk, const std::string& id, words::Sentence label,
               const std::optional<studio::Money>& start);

/// All mouthpieces that are not archived, and `also` in any case, after "none".
std::vector<SlipChoice> mouthpiece_choices(const Desk& desk, std::optional<studio::MouthpieceId> also = {});
/// All students that are not archived, and `also` in any case.
std::vector<SlipChoice> student_choices(const Desk& desk, std::optional<studio::StudentId> also = {});

/// A record's id as the key of a choice, and back; the key of none is empty.
template <typename Record>
std::string key_of(studio::Id<Record> id) {
    return std::to_string(id.number);
}
template <typename Id>
std::optional<Id> id_of(const std::string& key) {
    if (key.empty()) return std::nullopt;
    return Id{std::stoll(key)};
}

}  // namespace lowledger::desk
