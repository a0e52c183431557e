#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "app/desk/listing.h"
#include "model/store/studio_file.h"
#include "reports/pages/routine_sheet.h"
#include "reports/words/words.h"

namespace lowledger::desk {

class Desk;

/// The routines with how many students have each now; archived ones are faint and last.
Listing routines_listing(const Desk& desk, std::string_view find);
/// The students who have a routine now, by name.
std::vector<studio::Student> who_has(const store::StudioFile& file, studio::RoutineId id, studio::Date on);
Listing who_has_listing(const Desk& desk, studio::RoutineId id);
/// "Middle, Advanced", or "All".
std::string levels_text(const words::Words& words, const std::vector<studio::Level>& levels);

/// What the student of the page has been given: what holds today or begins later, then (faint) what ran out
/// in the last four weeks and was not renewed.
std::vector<studio::Assignment> given_to_student(const Desk& desk);
/// The row that is selected among them; else the first.
std::optional<studio::Assignment> given_selected(const Desk& desk);
Listing given_listing(const Desk& desk);
/// The routine sheet of the student for the week of `day`, from its Monday, at the horn played then.
pages::RoutineSheetInputs routine_sheet_of(const store::StudioFile& file, const studio::Student& student,
                                           studio::Date day, const pages::PageStyle& style);

/// Files what the studio has not of the library (by key; archived ones count). Gives how many.
int add_missing_routines(store::StudioFile& file, const words::Words& words);
std::vector<studio::Routine> missing_routines(const store::StudioFile& file);

}  // namespace lowledger::desk
