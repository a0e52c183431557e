#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "app/desk/desk.h"
#include "app/desk/listing.h"

/// The end of a school year as a list to work through.
namespace lowledger::desk {

/// What is left to see to at the year's end.
struct YearsEnd {
    /// Horns that are out, by the day they are due.
    std::vector<studio::Loan> out;
    /// Horns of the school that are in and that nobody checked for so long as `check_holds_days`.
    std::vector<studio::Horn> unchecked;
    /// Work on horns that is noted and not done.
    std::vector<studio::Upkeep> to_repair;
    /// All who are not archived.
    std::vector<studio::Student> students;
};
/// A check of this or the last weeks counts for the year's end.
inline constexpr int check_holds_days = 60;

YearsEnd years_end(const Desk& desk);
/// A row for each, in that order.
Listing years_end_listing(const Desk& desk);
/// How many of each.
std::string years_end_summary(const Desk& desk);

/// What the chosen row, or the first, is about; empty without a row.
using YearsEndItem = std::variant<studio::Loan, studio::Horn, studio::Upkeep, studio::Student>;
std::optional<YearsEndItem> chosen_item(const Desk& desk);

/// The school year after that one: its first number is one more. What has no number stays.
std::string next_year(std::string_view year);

}  // namespace lowledger::desk
